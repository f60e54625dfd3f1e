using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Beer moved from one tank to another.</summary>
/// <param name="FromId">The tank it left.</param>
/// <param name="ToId">The tank it went to.</param>
/// <param name="BatchId">The batch.</param>
/// <param name="Volume">In L, as it arrived.</param>
/// <param name="Left">In L, what stayed behind: nothing, or sediment and heel. The first tank is empty of beer only when <see cref="IsRest"/>.</param>
public sealed record Racked(Guid FromId, Guid ToId, Guid BatchId, Volume Volume, Volume Left) : LogEntry
{
    /// <summary>All of it: the first tank holds no beer any more.</summary>
    public bool IsRest { get; init; } = true;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(FromId), Subject.Tank(ToId), Subject.Batch(BatchId)];

    public override IEnumerable<Handover> Handovers =>
        [
            new(Subject.Tank(FromId), Subject.Tank(ToId)),
            new(Subject.Batch(BatchId), Subject.Tank(ToId)),
            new(Subject.Tank(FromId), Subject.Batch(BatchId)),
            new(Subject.Tank(ToId), Subject.Batch(BatchId)),
        ];

    public override HandedOver? HandedOverBy(State giver) => Carried.By(giver);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (to, state) = before.Tank(ToId);
        return
        [
            .. Ends(before),
            .. Occupied.ByAnother(to, state, BatchId),
            .. Receiving(to, state, before),
            .. Volumes.Nothing(Volume),
            .. Volumes.BelowNothing(Left),
            .. Volumes.MoreOutThanIn(FromId, BatchId, Gone, before),
            .. Fit.Objections(to, Books.Sum(state.Contents.Volume ?? Litres.None, Volume)),
            .. Leaving.Unfinished(FromId, BatchId, before),
            .. Leaving.HopsMetYeast(BatchId, into: [], before),
            .. NotPurged(to, state),
            .. LettingOut(before),
            .. IsRest ? Volumes.Missing(FromId, BatchId, Gone, before) : [],
        ];
    }

    /// <summary>A tank that holds the same beer already is in use: only its vent matters.</summary>
    private IEnumerable<Objection> Receiving(Tank to, TankState state, Floor before) =>
        state.HoldsBeer
            ? ReadyToFill.VentClosed(to, state, before.Rules, Volume)
            : ReadyToFill.Objections(to, state, before.Rules, At, Volume, before.Batch(BatchId).State.Allergens);

    /// <summary>All that leaves the first tank's books, in L.</summary>
    private Volume Gone => IsRest ? Books.Sum(Volume, Left) : Volume;

    private IEnumerable<Objection> Ends(Floor before) =>
        FromId == ToId
            ? [Objection.Impossible("same-tank", new Number("tank", before.Tank(ToId).Thing.Code))]
            : Beer.NotIn(FromId, BatchId, before);

    private IEnumerable<Objection> LettingOut(Floor before)
    {
        var (from, state) = before.Tank(FromId);
        return Vacuum.WhenLettingOut(from, state);
    }

    /// <summary>An open type holds no gas, so nobody can be asked to purge it; nor is beer purged that is there already.</summary>
    private IEnumerable<Objection> NotPurged(Tank to, TankState state)
    {
        if (!to.IsOpenType && state.BatchId != BatchId && state.Gas is not Gas.CarbonDioxide)
        {
            yield return Objection.Caution("target-not-purged", new Number("tank", to.Code));
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.Id == ToId ? ChangeTo(tank).Met(handed, BatchId, Moment.Of(this))
        : IsRest ? tank.EmptiedOf(Left, Moment.Of(this))
        : tank.Without(BatchId, Volume);

    /// <summary>Cold beer stays cold on its way.</summary>
    public override BatchState Change(BatchState batch, Listed<HandedOver> handed)
    {
        var after = batch.OutOf(FromId, Volume, litres => litres).Into(ToId, Volume, Moment.Of(this)).Met(handed);
        if (batch.In(FromId)?.Cold is { } cold && batch.In(ToId) is null && after.In(ToId) is { } arrived)
        {
            after = after.With(arrived with { Cold = cold });
        }

        return IsRest ? after.Emptied(FromId, Left, Moment.Of(this)) : after;
    }

    private TankState ChangeTo(TankState tank) =>
        tank.BatchId == BatchId
            ? tank.With(BatchId, booked => Books.Sum(booked, Volume))
            : tank.FilledWith(BatchId, Volume, Moment.Of(this));
}
