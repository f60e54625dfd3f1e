using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The sanitizer went in: contact begins. What leaves it is <see cref="Drained"/>.</summary>
public sealed record Sanitized(Guid TankId, Agent Agent, Way How) : LogEntry, ITakesStock
{
    private const string NotClean = "not-clean";

    /// <summary>As on the label: "1.5 %", "30 mL in 10 L".</summary>
    public string? Concentration { get; init; }

    /// <summary>In °C.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>In minutes, as meant: how long it was in is from here to when it is drained.</summary>
    public Duration? Minutes { get; init; }

    /// <summary>The label's own least contact, in minutes; it comes before the family's.</summary>
    public Duration? LabelMinutes { get; init; }

    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Steps.HoldsBeer(tank, state),
            .. Ground(tank, state, before.Rules),
            .. Condition.PartsOff(tank, state),
            .. Condition.NotTightToSanitize(tank, state),
            .. Chosen(tank),
            .. Fittings.NoSprayBall(tank, state, How),
            .. Chemistry.Chlorine(tank, state, Agent),
            .. Chemistry.Alkaline(tank, state, Agent),
            .. Chemistry.TooHot(tank, Hottest),
            .. Heat.InShutTank(tank, state, Hottest.IsHot()),
            .. Steps.VoidsBath(tank, state),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var onWalls = tank.Heated(Hottest.IsHot(), this).HurtByChlorine(Agent, this) with
        {
            ChemicalOnWalls = Agent is Agent.HotWater ? null : Agent,
        };
        return tank.HoldsBeer
            ? onWalls
            : onWalls.Wetted(this).WithSoil(SoilUnder(tank), this) with
            {
                SanitizerIn = Moment.Of(this),
                Contents = new(Holding.Sanitizer, Moment.Of(this)) { Agent = Agent, LabelMinutes = LabelMinutes },
            };
    }

    // Dirt can't be sanitized. A brewer who allowed it beforehand has vouched for the walls.
    private Soil SoilUnder(TankState tank) =>
        tank.Soil is Soil.Clean or Soil.Sanitized
        || tank.Allowances.Any(a => Uses(a) && a.Codes.Contains(NotClean, StringComparer.Ordinal))
            ? Soil.Clean
            : tank.Soil;

    private Temperature? Hottest => Agent.TemperatureOf(Temperature);

    /// <summary>Stop: sanitizing works on clean walls only.</summary>
    private IEnumerable<Objection> Ground(Tank tank, TankState state, HouseRules rules)
    {
        if (Sanitizing.SoilNow(tank, state, rules, At) is not (Soil.Clean or Soil.Sanitized or Soil.InUse))
        {
            yield return Objection.Stop(NotClean, new Number("tank", tank.Code));
        }
    }

    /// <summary>Stop: what is no sanitizer, and what foams through a spray ball.</summary>
    private IEnumerable<Objection> Chosen(Tank tank)
    {
        if (!Agent.IsSanitizer())
        {
            yield return Objection.Stop("no-sanitizer", new Number("tank", tank.Code));
        }

        if (Agent.Foams() && How is Way.SprayBall)
        {
            yield return Objection.Stop("foams-through-spray-ball", new Number("tank", tank.Code));
        }
    }
}
