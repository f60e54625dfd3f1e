namespace BrewFloor.Domain.Log;

/// <summary>When an entry is taken to have happened.</summary>
public static class Times
{
    /// <summary>In UTC, cut to the microsecond: what the database keeps is what is judged.</summary>
    public static DateTimeOffset Cut(DateTimeOffset at)
    {
        var utc = at.ToUniversalTime();
        return utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMicrosecond));
    }

    /// <summary>On our clock: as said; left out, when it was recorded.</summary>
    public static DateTimeOffset Happened(LogEntry entry, DateTimeOffset recorded) =>
        Cut(entry.At == default ? recorded : Clocks.OnOurs(entry.At, entry.SentAt, recorded));

    /// <summary>Somebody typed hours and minutes: the seconds are not known.</summary>
    public static bool IsTypedMinute(DateTimeOffset at) => at.UtcTicks % TimeSpan.TicksPerMinute == 0;

    /// <summary>A typed minute that already holds entries comes after the latest of them.</summary>
    /// <param name="at">As typed.</param>
    /// <param name="latest">The latest of its subjects' entries within that minute, if any.</param>
    public static DateTimeOffset After(DateTimeOffset at, DateTimeOffset? latest) =>
        latest is { } held ? held.AddTicks(TimeSpan.TicksPerMicrosecond) : at;
}
