using System.Globalization;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Shell;

/// <summary>One of the languages that every page is written in.</summary>
/// <param name="Code">As in HTML and HTTP: "de".</param>
/// <param name="Name">In itself, for whoever reads no other.</param>
/// <param name="Culture">Of texts, of the decimal mark, of the names of days.</param>
public sealed record Language(string Code, string Name, CultureInfo Culture);

/// <summary>The languages to choose from; the first is that of whoever asked for none of them.</summary>
public static class Languages
{
    public static readonly Language English = new("en", "English", CultureInfo.GetCultureInfo("en-GB"));

    public static readonly Language German = new("de", "Deutsch", CultureInfo.GetCultureInfo("de-DE"));

    public static readonly IReadOnlyList<Language> All = [English, German];

    /// <returns>Null: not one of ours.</returns>
    public static Language? Of(string? code) =>
        All.FirstOrDefault(language => string.Equals(language.Code, code, StringComparison.Ordinal));

    /// <summary>A person's own, else their browser's. Programs compare words: theirs are English, whoever sends them.</summary>
    public static Language For(HttpContext http) =>
        http.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            ? English
            : Of(http.User.FindFirst(Policies.LanguageClaim)?.Value) ?? AskedBy(http.Request);

    /// <summary>The first of ours among those the browser was set to; "de-AT" is one of ours.</summary>
    public static Language AskedBy(HttpRequest request) =>
        request
            .GetTypedHeaders()
            .AcceptLanguage.Where(wish => wish.Quality is not 0)
            .OrderByDescending(wish => wish.Quality ?? 1)
            .Select(wish => Of(wish.Value.ToString().Split('-')[0].ToLowerInvariant()))
            .FirstOrDefault(language => language is not null)
        ?? English;
}
