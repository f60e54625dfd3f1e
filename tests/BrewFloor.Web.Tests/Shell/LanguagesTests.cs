using System.Security.Claims;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Items;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Http;

namespace BrewFloor.Web.Tests.Shell;

/// <summary>Every page is written in every language, and everybody reads their own.</summary>
public class LanguagesTests
{
    // What programs read is in one language for all.
    private static readonly string[] Subjects = ["Pages", "Entries", "Objections", "Jobs", "Calculators"];

    public static MatrixTheoryData<string, string> OtherLanguages =>
        new(Languages.All.Skip(1).Select(language => language.Code), Subjects);

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void Every_text_is_there_with_the_same_places(string language, string subject)
    {
        var (english, other) = (Texts.Of(subject), Texts.Of($"{subject}.{language}"));

        Assert.Empty(english.Keys.Except(other.Keys));
        Assert.Empty(other.Keys.Except(english.Keys));
        Assert.Empty(english.Where(text => Differs(text.Value, other[text.Key])).Select(text => text.Key));
    }

    [Theory]
    [InlineData("{a} of {b}", "{b} von {a}", false)]
    [InlineData("{a} of {b}", "{a} von", true)]
    [InlineData("{a}", "{a} {a}", true)]
    [InlineData("a word", " ", true)]
    public void A_place_that_is_lost_is_found(string english, string other, bool differs) =>
        Assert.Equal(differs, Differs(english, other));

    [Theory]
    [InlineData("de", "de")]
    [InlineData("de-AT,en;q=0.5", "de")]
    [InlineData("fr, de;q=0.7, en;q=0.8", "en")]
    [InlineData("DE-de", "de")]
    [InlineData("de;q=0, fr", "en")]
    [InlineData("*", "en")]
    [InlineData("", "en")]
    [InlineData(";;q=,", "en")]
    public void A_browser_is_answered_in_the_first_of_its_languages_that_there_is(string asked, string answered)
    {
        var request = new DefaultHttpContext().Request;
        request.Headers.AcceptLanguage = asked;

        Assert.Equal(answered, Languages.AskedBy(request).Code);
    }

    [Theory]
    [InlineData("/tanks/F1", "de", "en", "de")]
    [InlineData("/tanks/F1", "", "de", "de")]
    [InlineData("/tanks/F1", "en", "de", "en")]
    [InlineData("/api/v1/log", "de", "de", "en")]
    public void A_person_reads_their_own_else_their_browsers_and_programs_english(
        string path,
        string chosen,
        string asked,
        string answered
    )
    {
        var http = new DefaultHttpContext
        {
            User = new(new ClaimsIdentity([new Claim(Policies.LanguageClaim, chosen)])),
        };
        http.Request.Path = path;
        http.Request.Headers.AcceptLanguage = asked;

        Assert.Equal(answered, Languages.For(http).Code);
    }

    [Fact]
    public void Figures_have_the_decimal_mark_and_the_days_of_the_language()
    {
        var german = new Figures(Languages.German.Culture, TimeZoneInfo.Utc, ReadingUnits.Metric);

        Assert.Equal("1,048", german.Of(SpecificGravity.Of(1.048)));
        Assert.Equal("3\u00a0Tage", german.Of(TimeSpan.FromDays(3)));
        Assert.Equal("2\u00a0Stück", german.Of(StockAmount.Of(2)));
        Assert.Equal("Fr 13 März", german.Day(new(2026, 3, 13)).Replace(".", "", StringComparison.Ordinal));
    }

    private static bool Differs(string english, string other) =>
        (string.IsNullOrWhiteSpace(other) && english.Length > 0)
        || !Texts
            .PlacesIn(english)
            .Order(StringComparer.Ordinal)
            .SequenceEqual(Texts.PlacesIn(other).Order(StringComparer.Ordinal));
}
