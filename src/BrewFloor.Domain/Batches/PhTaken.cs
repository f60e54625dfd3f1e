using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>The pH was read.</summary>
public sealed record PhTaken(Guid TankId, double Ph) : LogEntry
{
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects =>
        BatchId is { } batch ? [Subject.Tank(TankId), Subject.Batch(batch)] : [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
