using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Objections to litres that cannot be, and to litres nobody can account for.</summary>
public static class Volumes
{
    // Half a millilitre: sums of decimal litres are off by less, and no vessel is read finer.
    private const double Rounding = 0.0005;

    /// <summary>Impossible: nothing, or less than nothing, moved.</summary>
    public static IEnumerable<Objection> Nothing(Volume volume)
    {
        if (volume.Liters <= 0)
        {
            yield return Objection.Impossible("no-volume", new Number("volume", volume));
        }
    }

    /// <summary>Impossible: less than nothing.</summary>
    public static IEnumerable<Objection> BelowNothing(Volume volume) => volume.Liters < 0 ? Nothing(volume) : [];

    /// <summary>
    /// Impossible: more comes out of a tank than is in it, by more than measuring error; counted since a level was last
    /// measured. The way out is to measure the level first. Beer of an unknown volume has no such limit.
    /// </summary>
    /// <param name="gone">In L, all that leaves in this entry, heel included.</param>
    public static IEnumerable<Objection> MoreOutThanIn(Guid tankId, Guid batchId, Volume gone, Floor before)
    {
        if (Booked(tankId, batchId, before) is not { Volume: { } booked } beer)
        {
            yield break;
        }

        var over = Math.Max(0, gone.Liters - booked.Liters);
        if (over > 0 && over + beer.Over.Liters > Error(beer, before.Rules) + Rounding)
        {
            yield return Objection.Impossible(
                "more-out-than-in",
                new("tank", before.Tank(tankId).Thing.Code),
                new("volume", gone),
                new("booked", booked),
                new("error", Volume.FromLiters(Error(beer, before.Rules)))
            );
        }
    }

    /// <summary>Caution: the tank is said to be empty, and more than measuring error is missing.</summary>
    /// <param name="gone">In L, all that leaves in this entry, heel included.</param>
    public static IEnumerable<Objection> Missing(Guid tankId, Guid batchId, Volume gone, Floor before)
    {
        if (Booked(tankId, batchId, before) is not { Volume: { } booked } beer)
        {
            yield break;
        }

        var missing = booked.Liters - gone.Liters;
        if (missing > Error(beer, before.Rules) + Rounding)
        {
            yield return Objection.Caution(
                "beer-missing",
                new("tank", before.Tank(tankId).Thing.Code),
                new("volume", Volume.FromLiters(missing)),
                new("booked", booked)
            );
        }
    }

    /// <summary>Caution: a heel above 1 % of what came in (common practice, no source).</summary>
    public static IEnumerable<Objection> LargeHeel(Guid tankId, Guid batchId, Volume heel, Floor before)
    {
        if (Booked(tankId, batchId, before) is not { } beer || beer.CameIn.Liters <= 0)
        {
            yield break;
        }

        var usual = before.Rules.HeelShare * beer.CameIn.Liters;
        if (heel.Liters > usual + Rounding)
        {
            yield return Objection.Caution(
                "large-heel",
                new("tank", before.Tank(tankId).Thing.Code),
                new("heel", heel),
                new("usual", Volume.FromLiters(usual))
            );
        }
    }

    /// <summary>What a measuring may be off by, in L: 3 % of what came in, or 2 L if that is more.</summary>
    private static double Error(InTank beer, HouseRules rules) =>
        Math.Max(rules.VolumeErrorShare * beer.CameIn.Liters, rules.VolumeError.Liters);

    private static InTank? Booked(Guid tankId, Guid batchId, Floor before) => before.Batch(batchId).State.In(tankId);
}
