using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>What speaks against beer leaving its tank, for packages or another tank.</summary>
public static class Leaving
{
    /// <summary>Cautions: not stable, above the limit of attenuation, or the limit is unknown.</summary>
    public static IEnumerable<Objection> Unfinished(Guid tankId, Guid batchId, Floor before)
    {
        var (batch, state) = before.Batch(batchId);
        var number = new Number("batch", batch.Called);
        var last = state.ReadingsOf(tankId).LastOrDefault();
        var isStable = state.IsStable(tankId, before.Rules);
        if (!isStable)
        {
            yield return Objection.Caution(
                "gravity-not-stable",
                number,
                new("apart", (int)before.Rules.StableFor.TotalHours)
            );
        }

        if (batch.LimitOfAttenuation is not { } limit)
        {
            yield return Objection.Caution("limit-unknown", number);
        }
        else if (isStable && last != default && last.IsAbove(limit, before.Rules))
        {
            yield return Objection.Caution("above-limit", number, new("gravity", last.Gravity), new("limit", limit));
        }
    }

    /// <summary>Dry hopped with yeast since it was stable: a caution, a stop for packages that let nothing off.</summary>
    /// <param name="into">The packages; none when it goes to another tank.</param>
    public static IEnumerable<Objection> HopsMetYeast(Guid batchId, Listed<Containers> into, Floor before)
    {
        var (batch, state) = before.Batch(batchId);
        if (state.DryHoppedWithYeastSince(before.Rules) is not { } since)
        {
            yield break;
        }

        Number[] numbers = [new("batch", batch.Called), new("hopped", since.At)];
        yield return into.Any(container => container.AreSealed)
            ? Objection.Stop("hop-creep-sealed", numbers)
            : Objection.Caution("hop-creep", numbers);
    }
}
