using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>Objections that every entry about beer in a tank shares.</summary>
public static class Beer
{
    /// <summary>What is done to a tank, and to the beer in it where that is said.</summary>
    public static IEnumerable<Subject> About(Guid tankId, Guid? batchId) =>
        batchId is { } batch ? [Subject.Tank(tankId), Subject.Batch(batch)] : [Subject.Tank(tankId)];

    /// <summary>Impossible: the account of the batch is closed, no tank holds any of it.</summary>
    public static IEnumerable<Objection> IsGone(Guid batchId, Floor before)
    {
        var (batch, state) = before.Batch(batchId);
        if (state.Closed is { } closed)
        {
            yield return Objection.Impossible("batch-closed", new("batch", batch.Called), new("closed", closed.At));
        }
    }

    /// <summary>Impossible: the tank holds beer and the entry doesn't say of which batch, or names one that isn't in it.</summary>
    public static IEnumerable<Objection> NotNamed(Guid tankId, Guid? batchId, Floor before)
    {
        var (tank, state) = before.Tank(tankId);
        return batchId is { } batch ? NotIn(tankId, batch, before)
            : state.HoldsBeer ? [Objection.Impossible("batch-not-named", new Number("tank", tank.Code))]
            : [];
    }

    /// <summary>Impossible: the log has no beer of this batch in this tank.</summary>
    public static IEnumerable<Objection> NotIn(Guid tankId, Guid batchId, Floor before)
    {
        var (tank, state) = before.Tank(tankId);
        if (state.BatchId != batchId)
        {
            yield return Objection.Impossible(
                "no-such-beer",
                new("tank", tank.Code),
                new("batch", before.Batch(batchId).Thing.Called)
            );
        }
    }
}
