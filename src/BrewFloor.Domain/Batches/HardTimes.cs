using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Batches;

/// <summary>When a batch begins and ceases to ferment hard by time alone, for what has to wait meanwhile.</summary>
internal static class HardTimes
{
    private static readonly TimeSpan Day = TimeSpan.FromHours(24);

    /// <summary>The first moment at which it doesn't ferment hard any more if nobody reads anything; null when it doesn't now.</summary>
    public static DateTimeOffset? HardUntil(this BatchState batch, HouseRules rules, DateTimeOffset now) =>
        batch.IsFermentingHard(rules, now)
            ? batch
                .Edges()
                .Where(edge => edge > now && !batch.IsFermentingHard(rules, edge))
                .Min(edge => (DateTimeOffset?)edge)
            : null;

    /// <summary>When it last ceased to, by time or because a reading said so; null when it never did.</summary>
    public static DateTimeOffset? HardEnded(this BatchState batch, HouseRules rules, DateTimeOffset now) =>
        batch
            .Edges()
            .Concat(batch.Gravities.Select(g => g.Moment.At))
            .Where(edge => edge <= now && !batch.IsFermentingHard(rules, edge) && WasHardBefore(batch, edge, rules))
            .Max(edge => (DateTimeOffset?)edge);

    /// <summary>The next moment at which it may change by itself.</summary>
    public static DateTimeOffset? HardChanges(this BatchState batch, DateTimeOffset now) =>
        batch.Edges().Where(edge => edge > now).Min(edge => (DateTimeOffset?)edge);

    // As it was known then: without the readings that came later. Ends are inclusive, so it ends a tick after.
    private static bool WasHardBefore(BatchState batch, DateTimeOffset edge, HouseRules rules) =>
        (batch with { Gravities = [.. batch.Gravities.Where(g => g.Moment.At < edge)] }).IsFermentingHard(
            rules,
            edge.AddMicroseconds(-1)
        );

    private static IEnumerable<DateTimeOffset> Edges(this BatchState batch)
    {
        if (batch.Pitches is [var pitch, ..])
        {
            yield return pitch.Moment.At + Fermentation.HardBegins;
            yield return (pitch.Moment.At + Fermentation.HardEnds).AddMicroseconds(1);
        }

        foreach (var reading in batch.Gravities)
        {
            yield return (reading.Moment.At + Day).AddMicroseconds(1);
        }
    }
}
