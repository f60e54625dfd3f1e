using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Air was driven out with gas, by pressure cycles or by volumes pushed through.</summary>
public sealed record Purged(Guid TankId, Gas Gas) : LogEntry, ITakesStock
{
    public int? Cycles { get; init; }

    /// <summary>Tank volumes of gas pushed through.</summary>
    public double? Volumes { get; init; }

    /// <summary>The top of each cycle, or what it stands under now, in kPa gauge.</summary>
    public Pressure? Pressure { get; init; }

    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Pressure is { } read ? PressureGuards.Unreadable(read, lowest: Pressures.None) : [],
            .. Raises(state) ? PressureGuards.Raising(tank, state, before.Rules, At, Pressure) : [],
        ];
    }

    private bool Raises(TankState state) => state.IsShut || Pressure > Pressures.None;

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        Pressure > Pressures.None ? tank.ShutAs(Closure.Sealed, Gas, At).AtPressure(Pressure.Value, this)
        : tank.IsShut ? tank.ShutAs(tank.Closure, Gas, At).InDoubt()
        : tank.ShutAs(tank.Closure, Gas, At);
}
