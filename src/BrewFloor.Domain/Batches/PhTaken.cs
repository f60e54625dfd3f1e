using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>The pH was read. It stands in the log alone: no rule of the first release asks for it.</summary>
public sealed record PhTaken(Guid TankId, double Ph) : LogEntry
{
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        foreach (var objection in BatchId is { } batch ? Beer.NotIn(TankId, batch, before) : [])
        {
            yield return objection;
        }

        if (Ph is not (>= 0 and <= 14)) // not a number is neither
        {
            yield return Objection.Impossible("ph-unreadable", new("from", 0), new("to", 14));
        }
    }
}
