using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The tank is empty of beer; the account of this tank is closed, and the rest is heel.</summary>
public sealed record Emptied(Guid TankId, Guid BatchId, Volume Heel) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Volumes.BelowNothing(Heel),
            .. Volumes.MoreOutThanIn(TankId, BatchId, Heel, before),
            .. Vacuum.WhenLettingOut(tank, state),
            .. Volumes.Missing(TankId, BatchId, Heel, before),
            .. Volumes.LargeHeel(TankId, BatchId, Heel, before),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.EmptiedOf(Heel, Moment.Of(this));

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.Emptied(TankId, Heel, Moment.Of(this));
}
