using System.Security.Claims;
using BrewFloor.Web.Account;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Shell;

/// <summary>Who reads: their language, units, and the site's time zone.</summary>
public static class Reader
{
    private static readonly Dictionary<Language, Wording> Strangers = Languages.All.ToDictionary(
        language => language,
        language => For(language, ReadingUnits.Metric, TimeZoneInfo.Utc, now: null)
    );

    /// <summary>Texts for the console and for programs, in UTC and metric units.</summary>
    public static Wording Stranger => StrangerIn(Languages.English);

    /// <summary>Texts for somebody who isn't known yet, in UTC and metric units.</summary>
    public static Wording StrangerIn(Language language) => Strangers[language];

    /// <param name="asked">By the browser: for whoever chose none of their own.</param>
    public static Wording Of(ClaimsPrincipal user, Language asked, TimeZoneInfo zone, DateTimeOffset now) =>
        For(
            Languages.Of(user.FindFirstValue(Policies.LanguageClaim)) ?? asked,
            ReadingUnits.Parse(user.FindFirstValue(Policies.UnitsClaim)),
            zone,
            now
        );

    private static Wording For(Language language, ReadingUnits units, TimeZoneInfo zone, DateTimeOffset? now) =>
        new(new Figures(language.Culture, zone, units, now), language.Culture);
}
