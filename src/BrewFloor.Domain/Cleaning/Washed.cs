using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>A cleaner went through the tank. The tank stays soiled, with cleaner on its walls, until it is rinsed.</summary>
public sealed record Washed(Guid TankId, Agent Cleaner, Way How) : LogEntry, ITakesStock
{
    /// <summary>As on the label: "1.5 %", "30 mL in 10 L".</summary>
    public string? Concentration { get; init; }

    /// <summary>In °C.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>In minutes.</summary>
    public Duration? Minutes { get; init; }

    /// <summary>The label's own least contact, in minutes; it comes before the family's.</summary>
    public Duration? LabelMinutes { get; init; }

    /// <summary>The circuit was closed: no air could come in.</summary>
    public bool IsClosedCircuit { get; init; }

    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Steps.HoldsBeer(tank, state),
            .. Chemistry.Chlorine(tank, state, Cleaner),
            .. Chemistry.Alkaline(tank, state, Cleaner),
            .. Shut(tank, state, before.Rules),
            .. Fittings.NoSprayBall(tank, state, How),
            .. Chemistry.TooHot(tank, Hottest),
            .. Heat.InShutTank(tank, state, Hottest.IsHot()),
            .. Chemistry.ContactShort(tank, Cleaner, Minutes, LabelMinutes),
            .. Steps.VoidsBath(tank, state),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var onWalls = tank.Heated(Hottest.IsHot(), this).HurtByChlorine(Cleaner, this) with
        {
            ChemicalOnWalls = Cleaner,
        };
        return tank.HoldsBeer
            ? onWalls
            : onWalls.Wetted(this).WithSoil(Soil.Soiled, this) with
            {
                Washed = Moment.Of(this),
                RinsedAfterWash = null,
                SoiledBeforeRinse = null,
                Contents =
                    How is Way.ByHand
                        ? Contents.Nothing
                        : new(Holding.Cleaner, Moment.Of(this)) { Agent = Cleaner, LabelMinutes = LabelMinutes },
            };
    }

    private Temperature? Hottest => Cleaner.TemperatureOf(Temperature);

    /// <summary>Acid or neutral under carbon dioxide: caution in a closed circuit within the rating, else stop!.</summary>
    private IEnumerable<Objection> Shut(Tank tank, TankState state, HouseRules rules)
    {
        if (Cleaner.IsAlkaline())
        {
            return [];
        }

        var isUnderPressure = state.MayBeUnderPressure();
        return
        [
            .. state.Gas is Gas.Air
                ? Array.Empty<Objection>()
                : [Objection.Caution("acid-under-co2", new Number("tank", tank.Code))],
            .. isUnderPressure && !IsClosedCircuit
                ? [Objection.HardStop("circuit-open-under-pressure", new Number("tank", tank.Code))]
                : Array.Empty<Objection>(),
            .. isUnderPressure && state.PressureNow() is null
                ? [PressureGuards.Unknown(tank)]
                : Array.Empty<Objection>(),
            .. isUnderPressure ? PressureGuards.Raising(tank, state, rules, At, to: null) : [],
        ];
    }
}
