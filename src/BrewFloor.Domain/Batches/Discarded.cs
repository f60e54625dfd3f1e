using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Beer poured away, and why.</summary>
public sealed record Discarded(Guid TankId, Guid BatchId, Volume Volume, string Why) : LogEntry
{
    /// <summary>All of it: the tank is empty.</summary>
    public bool IsRest { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Volumes.Nothing(Volume),
            .. Volumes.MoreOutThanIn(TankId, BatchId, Volume, before),
            .. Vacuum.WhenLettingOut(tank, state),
            .. IsRest ? Volumes.Missing(TankId, BatchId, Volume, before) : [],
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        IsRest ? tank.EmptiedOf(heel: null, Moment.Of(this)) : tank.Without(BatchId, Volume);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed)
    {
        var after = batch.OutOf(TankId, Volume, l => l with { Discarded = Books.Sum(l.Discarded, Volume) });
        return IsRest
            ? after.Emptied(TankId, Litres.None, Moment.Of(this)) with
            {
                Discarded = Moment.Of(this),
            }
            : after;
    }
}
