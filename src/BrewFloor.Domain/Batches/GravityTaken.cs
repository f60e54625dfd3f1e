using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>A gravity, as the instrument showed it; the corrected value is derived.</summary>
public sealed record GravityTaken(Guid TankId, Guid BatchId, GravityRead Read) : LogEntry
{
    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) =>
        [.. Beer.NotIn(TankId, BatchId, before), .. Read.Unreadable()];

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.WithGravity(TankId, Read, Moment.Of(this));
}
