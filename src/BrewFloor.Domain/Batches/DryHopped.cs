using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Hops went into the beer.</summary>
public sealed record DryHopped(Guid TankId, Guid BatchId, string Material, Mass Mass, HopWay Way) : LogEntry
{
    private const int Kept = 200;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch with
        {
            DryHops = batch.DryHops.And(new(Moment.Of(this), TankId, Material, Mass, OutAt: null), Kept),
        };
}
