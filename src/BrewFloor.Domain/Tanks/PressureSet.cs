using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What the spunding valve or regulator is told to hold, in kPa gauge. Zero: vented.</summary>
public sealed record PressureSet(Guid TankId, Pressure Pressure) : LogEntry
{
    /// <summary>The batch in the tank, so that it knows it keeps its gas.</summary>
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. PressureGuards.Unreadable(Pressure, lowest: Pressures.None),
            .. Pressure > Pressures.None
                ? [.. PressureGuards.Raising(tank, state, before.Rules, At, Pressure), .. Heat.Shutting(tank, state)]
                : Array.Empty<Objection>(),
        ];
    }

    // A set point is told, not read: only closing the way out is taken for a fact, never letting pressure off.
    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var set = tank with { PressureSet = new(Pressure, Moment.Of(this)) };
        return Pressure > Pressures.None ? set.ShutAs(Closure.Sealed, Gas.CarbonDioxide, At).InDoubt() : set;
    }

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.ShutIn(TankId, Pressure > Pressures.None ? this : null);
}
