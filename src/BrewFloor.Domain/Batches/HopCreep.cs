using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>Hops bring enzymes: where yeast meets them, a finished beer ferments on.</summary>
public static class HopCreep
{
    /// <summary>The last dry hopping that met yeast, unless the gravity has been found stable by readings after it.</summary>
    public static Moment? DryHoppedWithYeastSince(this BatchState batch, HouseRules rules)
    {
        DryHop[] met = [.. batch.DryHops.Where(hop => batch.HasYeastIn(hop.TankId, hop.Moment.At))];
        if (met is not [.., var last])
        {
            return null;
        }

        GravityFact[] after = [.. batch.Gravities.Where(g => g.Moment.At > last.Moment.At)];
        return Fermentation.AreStable(after.AsSpan(), rules) ? null : last.Moment;
    }

    /// <summary>
    /// Yeast lies in the tank: some was pitched (or the beer was taken over), none was dumped from the tank by then, and
    /// the beer didn't come racked off it.
    /// </summary>
    public static bool HasYeastIn(this BatchState batch, Guid tankId, DateTimeOffset at)
    {
        var isDumped = batch.Dumps.Any(d => d.TankId == tankId && d.What is Sediment.Yeast && d.Moment.At <= at);
        var isRacked =
            batch.In(tankId) is { } beer && batch.Pitches is [.., var pitch] && beer.Since.At > pitch.Moment.At;
        return (batch.IsTakenOver || batch.Pitches is not []) && !isDumped && !isRacked;
    }
}
