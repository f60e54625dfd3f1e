using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>It was shut, and this is how it stands now.</summary>
public sealed record Closed(Guid TankId) : LogEntry
{
    /// <summary>Vented, closed or sealed.</summary>
    public Closure Closure { get; init; }

    /// <summary>The batch in the tank, so that it knows whether it keeps its gas.</summary>
    public Guid? BatchId { get; init; }

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return Closure switch
        {
            Closure.Open => [Objection.Impossible("closed-as-open", new Number("tank", tank.Code))],
            Closure.Vented => [],
            _ =>
            [
                .. CanBuildPressure(state) ? PressureGuards.Raising(tank, state, before.Rules, At, to: null) : [],
                .. Heat.Shutting(tank, state),
            ],
        };
    }

    // Beer behind a shut vent can ferment or warm: nobody at the tank can rule it out.
    private bool CanBuildPressure(TankState state) => Closure is Closure.Sealed || state.HoldsBeer;

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var shut = tank.ShutAs(Closure, Closure is Closure.Sealed ? Gas.CarbonDioxide : tank.Gas, At);
        return Closure switch
        {
            Closure.Sealed => shut.InDoubt(),
            Closure.Closed => tank.HoldsBeer ? shut.InDoubt() : shut,
            _ => shut.AtPressure(Pressures.None, this),
        };
    }

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.ShutIn(TankId, Closure is Closure.Vented ? null : this);
}
