using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Beer went into kegs, casks, bottles or cans.</summary>
public sealed record Packaged(Guid TankId, Guid BatchId, Volume Volume, Listed<Containers> Containers) : LogEntry
{
    /// <summary>The containers were purged of air.</summary>
    public bool IsPurged { get; init; }

    /// <summary>The tank is empty of beer; what stayed is heel.</summary>
    public bool IsRest { get; init; }

    /// <summary>In L, when it is the rest.</summary>
    public Volume? Heel { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Volumes.Nothing(Volume),
            .. Volumes.BelowNothing(HeelLeft),
            .. Volumes.MoreOutThanIn(TankId, BatchId, Gone, before),
            .. Leaving.HopsMetYeast(BatchId, Containers, before),
            .. Leaving.Unfinished(TankId, BatchId, before),
            .. IsPurged
                ? Array.Empty<Objection>()
                : [Objection.Caution("containers-not-purged", new Number("tank", tank.Code))],
            .. Vacuum.WhenLettingOut(tank, state),
            .. IsRest ? Volumes.Missing(TankId, BatchId, Gone, before) : [],
            .. Volumes.LargeHeel(TankId, BatchId, HeelLeft, before),
        ];
    }

    private Volume HeelLeft => IsRest ? Heel ?? Litres.None : Litres.None;

    /// <summary>All that leaves the tank's books, in L.</summary>
    private Volume Gone => Books.Sum(Volume, HeelLeft);

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        IsRest ? tank.EmptiedOf(HeelLeft, Moment.Of(this)) : tank.Without(BatchId, Volume);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed)
    {
        var after = batch.OutOf(TankId, Volume, l => l with { Packaged = Books.Sum(l.Packaged, Volume) }) with
        {
            Packaged = Moment.Of(this),
        };
        return IsRest ? after.Emptied(TankId, HeelLeft, Moment.Of(this)) : after;
    }
}
