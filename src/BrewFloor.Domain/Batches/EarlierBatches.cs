using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;

namespace BrewFloor.Domain.Batches;

/// <summary>What batches of a strain did, as far as their logs tell.</summary>
internal static class EarlierBatches
{
    private const double AboutAsWarm = 3; // K, either way (ours)

    /// <summary>Of those that are over and fermented about as warm, the ones that were read often enough.</summary>
    /// <param name="all">Pitched with the strain, in any order; may hold the batch itself, which isn't over.</param>
    /// <param name="warmest">Of the batch that learns from them, °C.</param>
    public static IReadOnlyList<(int Number, EarlierBatch Did)> LearnFrom(
        IEnumerable<(Batch Thing, BatchState State)> all,
        double warmest
    ) =>
        [
            .. all.Where(batch => IsOver(batch.State))
                .Where(batch => Math.Abs(batch.State.WarmestOf(batch.Thing) - warmest) <= AboutAsWarm)
                .Select(batch => (batch.Thing.Number, Did: DidOf(batch.State)))
                .Where(batch => batch.Did is not null)
                .Select(batch => (batch.Number, batch.Did!.Value)),
        ];

    private static bool IsOver(BatchState batch) => batch.Packaged is not null || batch.Closed is not null;

    // By the yeast and the wort it began with, and without hops: after those it is another fall.
    private static EarlierBatch? DidOf(BatchState batch)
    {
        if (batch is not { OriginalGravity: { } original, Pitches: [var pitch, ..] })
        {
            return null;
        }

        var pitched = pitch.Moment.At;
        var until = batch.DryHops.Select(hop => hop.Moment.At).Where(at => at > pitched);
        var end = until.Append(batch.Packaged?.At ?? DateTimeOffset.MaxValue).Min();
        var did = EarlierBatch.Of(
            new DegreesPlato(Strength.Plato(original)),
            Forecasting.Readings([.. batch.Gravities.Where(read => read.Moment.At < end)], pitched)
        );
        return did.Gives(out var batchDid) ? batchDid : null;
    }
}
