using System.Security.Claims;
using BrewFloor.Web.Account;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Shell;

/// <summary>Who reads: their language, units, and the site's time zone.</summary>
public static class Reader
{
    /// <summary>Texts for the console, for programs, and for somebody who isn't known yet, in UTC and metric units.</summary>
    public static Wording Stranger { get; } = For(Languages.English, ReadingUnits.Metric, TimeZoneInfo.Utc, now: null);

    public static Wording Of(ClaimsPrincipal user, Language language, TimeZoneInfo zone, DateTimeOffset now) =>
        For(language, ReadingUnits.Parse(user.FindFirstValue(Policies.UnitsClaim)), zone, now);

    private static Wording For(Language language, ReadingUnits units, TimeZoneInfo zone, DateTimeOffset? now) =>
        new(new Figures(language.Culture, zone, units, now), language.Culture);
}
