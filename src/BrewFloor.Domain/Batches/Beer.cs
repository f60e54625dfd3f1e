using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>Objections that every entry about beer in a tank shares.</summary>
public static class Beer
{
    /// <summary>Impossible: the log has no beer of this batch in this tank.</summary>
    public static IEnumerable<Objection> NotIn(Guid tankId, Guid batchId, Floor before)
    {
        var (tank, state) = before.Tank(tankId);
        if (state.BatchId != batchId)
        {
            yield return Objection.Impossible(
                "no-such-beer",
                new("tank", tank.Code),
                new("batch", before.Batch(batchId).Thing.Number)
            );
        }
    }
}
