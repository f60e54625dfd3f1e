using System.Globalization;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>Moments at which somebody may start the demo: zones on both halves of the earth, odd days, all hours.</summary>
internal static class Moments
{
    public static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    /// <summary>An afternoon in May.</summary>
    public static readonly DateTimeOffset Afternoon = new(2026, 5, 20, 15, 40, 0, TimeSpan.Zero);

    private static readonly string[] EverywhereOdd =
    [
        "2026-05-20", // an ordinary day
        "2026-08-31",
        "2026-12-31",
        "2027-01-01",
        "2028-02-29",
        "2028-03-01",
    ];

    // When the clocks are changed in 2026, and the day after, when yesterday had 23 or 25 hours.
    private static readonly (string Zone, string[] Days)[] Zones =
    [
        ("Europe/Berlin", ["2026-03-29", "2026-03-30", "2026-10-25", "2026-10-26"]),
        ("America/New_York", ["2026-03-08", "2026-03-09", "2026-11-01", "2026-11-02"]),
        ("Pacific/Auckland", ["2026-04-05", "2026-04-06", "2026-09-27", "2026-09-28"]),
    ];

    private static readonly string[] Times = ["00:00", "00:01", "03:30", "06:10", "07:45", "12:00", "17:20", "23:59"];

    public static TheoryData<string, string> OfZonesAndDays()
    {
        TheoryData<string, string> rows = [];
        foreach (var (zone, days) in Zones)
        {
            foreach (var day in days.Concat(EverywhereOdd))
            {
                rows.Add(zone, day);
            }
        }

        return rows;
    }

    /// <summary>Times of a day as the site's clocks show them; a skipped one is left out.</summary>
    public static IEnumerable<DateTimeOffset> Of(string day, TimeZoneInfo zone) =>
        from time in Times
        let local = DateTime.ParseExact($"{day} {time}", "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
        where !zone.IsInvalidTime(local)
        select new DateTimeOffset(local, zone.GetUtcOffset(local));
}
