using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Batches;

/// <summary>What batches of a strain did, as far as their logs tell.</summary>
internal static class EarlierBatches
{
    private const int Most = 12; // more would hardly narrow it

    private const double Warmer = 3; // K (ours)

    /// <summary>The last twelve of those that came to their end, like it in kind and no colder, and were read often enough.</summary>
    /// <param name="all">Pitched with the strain, the newest first; may hold the batch itself, which isn't over.</param>
    /// <param name="thing">The batch that learns from them.</param>
    /// <param name="state">As it stands: what it hasn't warmed up to yet can't be held against it.</param>
    /// <param name="rules">When it counts as stable.</param>
    public static IReadOnlyList<(int Number, EarlierBatch Did)> LearnFrom(
        IEnumerable<(Batch Thing, BatchState State)> all,
        Batch thing,
        BatchState state,
        HouseRules rules
    ) =>
        [
            .. all.Where(batch => batch.Thing.Kind == thing.Kind)
                .Where(batch => state.WarmestOf(thing) <= batch.State.WarmestOf(batch.Thing) + Warmer)
                .Select(batch => (batch.Thing.Number, Did: DidOf(batch.State, rules)))
                .Where(batch => batch.Did is not null)
                .Select(batch => (batch.Number, batch.Did!.Value))
                .Take(Most),
        ];

    // By the yeast and the wort it began with, to where it stood still, and without hops: after those it is another fall.
    private static EarlierBatch? DidOf(BatchState batch, HouseRules rules)
    {
        if (batch is not { OriginalGravity: { } original, Pitches: [var pitch, ..] } || OverAt(batch) is not { } over)
        {
            return null;
        }

        var pitched = pitch.Moment.At;
        var end = batch.DryHops.Select(hop => hop.Moment.At).Where(at => at > pitched).Append(over).Min();
        GravityFact[] read = [.. batch.Gravities.Where(one => one.Moment.At >= pitched && one.Moment.At < end)];
        if (!Fermentation.AreStable(read, rules))
        {
            return null;
        }

        var did = EarlierBatch.Of(new DegreesPlato(Strength.Plato(original)), Forecasting.Readings(read, pitched));
        return did.Gives(out var known) ? known : null;
    }

    private static DateTimeOffset? OverAt(BatchState batch) => batch.Packaged?.At ?? batch.Closed?.At;
}
