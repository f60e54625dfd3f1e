using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Hops went into the beer.</summary>
public sealed record DryHopped(Guid TankId, Guid BatchId, string Material, Mass Mass, HopWay Way) : LogEntry
{
    private const int Kept = 200;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return [.. Beer.NotIn(TankId, BatchId, before), .. AtTheOpening(tank, state), .. WithYeast(before)];
    }

    /// <summary>Hops make the beer give off its gas at once: through an opening it comes out, with the lid if there is pressure.</summary>
    private IEnumerable<Objection> AtTheOpening(Tank tank, TankState state)
    {
        if (Way is HopWay.ThroughEqualisedPort)
        {
            yield return Objection.Caution("hops-through-port", new Number("tank", tank.Code));
        }
        else if (state.PressureNow() is not { } pressure)
        {
            yield return Objection.HardStop("hops-pressure-unknown", new Number("tank", tank.Code));
        }
        else if (pressure > Pressures.None)
        {
            yield return Objection.HardStop("hops-into-pressure", new("tank", tank.Code), new("pressure", pressure));
        }
    }

    private IEnumerable<Objection> WithYeast(Floor before)
    {
        var (batch, state) = before.Batch(BatchId);
        if (!batch.DryHopsDuringFermentation && state.HasYeastIn(TankId, At))
        {
            yield return Objection.Caution("hops-on-yeast", new Number("batch", batch.Called));
        }
    }

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch with
        {
            DryHops = batch.DryHops.And(new(Moment.Of(this), TankId, Material, Mass, OutAt: null), Kept),
        };
}
