namespace BrewFloor.DemoSeed;

/// <summary>The days of the scenario, counted from today: -1 is yesterday. Times are those of the site's clocks.</summary>
internal sealed class Calendar(DateOnly today, TimeZoneInfo zone)
{
    public DateOnly On(int day) => today.AddDays(day);

    /// <summary>The instant, in UTC. An hour that is skipped is the first after it, one that comes twice is the first.</summary>
    public DateTimeOffset At(int day, int hour, int minute = 0)
    {
        var local = On(day).ToDateTime(new TimeOnly(hour, minute));
        while (zone.IsInvalidTime(local))
        {
            local = local.AddMinutes(1);
        }

        var offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
    }
}
