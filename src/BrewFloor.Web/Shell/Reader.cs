using System.Globalization;
using System.Security.Claims;
using BrewFloor.Web.Account;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Shell;

/// <summary>Who reads: their language, units, and the site's time zone.</summary>
public static class Reader
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Texts for somebody who isn't known yet, in UTC and metric units.</summary>
    public static Wording Stranger { get; } = new(new Figures(English, TimeZoneInfo.Utc, ReadingUnits.Metric), English);

    public static Wording Of(ClaimsPrincipal user, TimeZoneInfo zone, DateTimeOffset now) =>
        new(new Figures(English, zone, ReadingUnits.Parse(user.FindFirstValue(Policies.UnitsClaim)), now), English);
}
