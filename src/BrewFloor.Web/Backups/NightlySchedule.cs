namespace BrewFloor.Web.Backups;

/// <summary>When a nightly backup is due: from what there is, not from ticks, so a night the machine was off is made up for.</summary>
public static class NightlySchedule
{
    /// <summary>After one that failed.</summary>
    public static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromHours(1);

    /// <param name="now">By the server's clock.</param>
    /// <param name="zone">Of the site.</param>
    /// <param name="hour">Of the site's clock.</param>
    /// <param name="lastMade">The newest that was made; none: one is due.</param>
    /// <param name="lastTried">The newest, made or not.</param>
    public static bool IsDue(
        DateTimeOffset now,
        TimeZoneInfo zone,
        int hour,
        DateTimeOffset? lastMade,
        DateTimeOffset? lastTried
    ) => !(lastMade >= LastHour(now, zone, hour)) && !(lastTried > now - BeforeTryingAgain);

    /// <summary>When it was last that hour; in the night that skips it, an hour later.</summary>
    public static DateTimeOffset LastHour(DateTimeOffset now, TimeZoneInfo zone, int hour)
    {
        var today = TimeZoneInfo.ConvertTime(now, zone).Date;
        var at = At(today, zone, hour);
        return at <= now ? at : At(today.AddDays(-1), zone, hour);
    }

    private static DateTimeOffset At(DateTime day, TimeZoneInfo zone, int hour)
    {
        var local = day.AddHours(hour);
        local = zone.IsInvalidTime(local) ? local.AddHours(1) : local;
        return new(local, zone.GetUtcOffset(local));
    }
}
