using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Sediment let out of the cone.</summary>
public sealed record Dumped(Guid TankId, Guid BatchId, Sediment What, Volume Volume) : LogEntry
{
    private const int Kept = 200;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Volumes.BelowNothing(Volume),
            .. Volumes.MoreOutThanIn(TankId, BatchId, Volume, before),
            .. Vacuum.WhenLettingOut(tank, state),
            .. HopsUnderPressure(tank, state),
            .. FermentingHard(before),
        ];
    }

    /// <summary>Hops plug the outlet, and what pushes them free is the pressure (common practice, no source).</summary>
    private IEnumerable<Objection> HopsUnderPressure(Tank tank, TankState state)
    {
        if (What is Sediment.Hops && state.PressureNow() is { } pressure && pressure > Pressures.None)
        {
            yield return Objection.Caution("hops-under-pressure", new("tank", tank.Code), new("pressure", pressure));
        }
    }

    /// <summary>What settles is stirred up again, and good yeast goes with it (common practice, no source).</summary>
    private IEnumerable<Objection> FermentingHard(Floor before)
    {
        var (batch, state) = before.Batch(BatchId);
        if (state.IsFermentingHard(before.Rules, At))
        {
            yield return Objection.Caution("fermenting-hard", new Number("batch", batch.Called));
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.Without(BatchId, Volume);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.OutOf(TankId, Volume, l => l with { Dumped = Books.Sum(l.Dumped, Volume) }) with
        {
            Dumps = batch.Dumps.And(new(Moment.Of(this), TankId, What, Volume), Kept),
            DryHops = What is Sediment.Hops ? batch.DryHopsOutOf(TankId, At) : batch.DryHops,
        };
}
