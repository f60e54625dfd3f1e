namespace BrewFloor.Domain.Log;

/// <summary>Two clocks: the sender's and ours. The sender's may be wrong; what was sent is not refused for it.</summary>
public static class Clocks
{
    /// <summary>A difference that nobody minds.</summary>
    public static readonly TimeSpan Tolerance = TimeSpan.FromMinutes(2);

    /// <summary>A clock that is further off than this tells no time.</summary>
    public static readonly TimeSpan MostSkew = TimeSpan.FromHours(24);

    /// <summary>How far the sender's clock is ahead of ours (below zero: behind); zero when the difference is within the tolerance.</summary>
    public static TimeSpan Skew(DateTimeOffset? sentAt, DateTimeOffset received) =>
        sentAt is { } sent && (sent - received).Duration() > Tolerance ? sent - received : TimeSpan.Zero;

    /// <summary>The sender's time of something, on our clock.</summary>
    public static DateTimeOffset OnOurs(DateTimeOffset at, DateTimeOffset? sentAt, DateTimeOffset received) =>
        at - Skew(sentAt, received);

    /// <summary>Impossible: a time that hasn't come yet on our clock, or a clock that tells no time.</summary>
    /// <param name="entry">With its time already on our clock.</param>
    /// <param name="received">When it came in, or was recorded.</param>
    public static IEnumerable<Objection> Objections(LogEntry entry, DateTimeOffset received)
    {
        if (Skew(entry.SentAt, received).Duration() > MostSkew)
        {
            yield return Objection.Impossible("clock-far-off", new("sent", entry.SentAt), new("received", received));
        }

        if (entry.At > received + Tolerance)
        {
            yield return Objection.Impossible("ahead-of-clock", new("at", entry.At), new("received", received));
        }
    }
}
