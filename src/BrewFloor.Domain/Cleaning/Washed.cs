using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>A cleaner went through the tank. The tank stays soiled, with cleaner on its walls, until it is rinsed.</summary>
public sealed record Washed(Guid TankId, Agent Cleaner, Way How) : LogEntry
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

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var onWalls = tank.Heated(Cleaner.TemperatureOf(Temperature).IsHot(), this).HurtByChlorine(Cleaner, this) with
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
}
