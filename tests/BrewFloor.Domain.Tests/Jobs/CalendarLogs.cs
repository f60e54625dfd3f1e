using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Tests.Cleaning;

namespace BrewFloor.Domain.Tests.Jobs;

/// <summary>Days of a calendar somewhere, and tanks as they stood on them.</summary>
internal static class CalendarLogs
{
    public static HouseRules RulesIn(string zone) => HouseRules.Defaults(TimeZoneInfo.FindSystemTimeZoneById(zone));

    /// <summary>Written with its offset: "2026-08-31T23:30+02:00".</summary>
    public static DateTimeOffset Instant(string text) =>
        DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture).ToUniversalTime();

    /// <summary>Its film dried then, and it was filled at these instants.</summary>
    public static TankState DriedAt(string dried, params ReadOnlySpan<DateTimeOffset> fills) =>
        new(CleaningLogs.K3.Id)
        {
            Dried = new(Instant(dried), Cause),
            DriedAfter = BathKind.Citric,
            FilledSinceDried = [.. fills.ToArray()],
        };

    /// <summary>Filled often enough to be no seldom-used steel.</summary>
    public static TankState OftenFilled(string dried) =>
        DriedAt(dried, [.. Enumerable.Range(1, 3).Select(day => Instant(dried).AddDays(day))]);

    public static readonly Guid Cause = Guid.Parse("018f0000-0000-7000-8000-0000000000aa");
}
