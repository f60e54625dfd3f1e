using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The acid bath. It counts only from the air-drying after it.</summary>
public sealed record Passivated(Guid TankId, BathKind Bath) : LogEntry, ITakesStock
{
    /// <summary>As on the label: "1.5 %", "30 mL in 10 L".</summary>
    public string? Concentration { get; init; }

    /// <summary>In °C.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>In minutes.</summary>
    public Duration? Minutes { get; init; }

    /// <summary>Rinsed with water as the practice says; any other liquid before the drying voids the bath.</summary>
    public bool IsRinsed { get; init; }

    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. NothingToPassivate(tank),
            .. Steps.HoldsBeer(tank, state),
            .. NotWashed(tank, state),
            .. Chemistry.Chlorine(tank, state, Agent.Acid),
            .. Chemistry.TooHot(tank, Temperature),
            .. Heat.InShutTank(tank, state, Temperature.IsHot()),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var onWalls = tank.Heated(Temperature.IsHot(), this) with { ChemicalOnWalls = IsRinsed ? null : Agent.Acid };
        return tank.HoldsBeer
            ? onWalls
            : onWalls.Wetted(this) with
            {
                Bath = new(Moment.Of(this), Bath, IsRinsed),
                Contents = IsRinsed ? Contents.Nothing : new(Holding.Bath, Moment.Of(this)) { Agent = Agent.Acid },
            };
    }

    private static IEnumerable<Objection> NothingToPassivate(Tank tank)
    {
        if (!tank.IsStainless)
        {
            yield return Objection.Impossible("nothing-to-passivate", new Number("tank", tank.Code));
        }
    }

    /// <summary>Stop: an acid bath works on clean steel only (ASTM A380: the surface must be clean first).</summary>
    private static IEnumerable<Objection> NotWashed(Tank tank, TankState state)
    {
        var isClean = state.Soil is Soil.Clean or Soil.Sanitized or Soil.InUse;
        if (!isClean && (state.Washed is null || state.RinsedAfterWash is null))
        {
            yield return Objection.Stop("not-washed", new Number("tank", tank.Code));
        }
    }
}
