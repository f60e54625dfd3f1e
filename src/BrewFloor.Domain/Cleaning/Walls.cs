using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>What a liquid does to the walls, whichever it is: what every entry of cleaning writes into a tank's state.</summary>
public static class Walls
{
    // CP: above the warmest water of a first rinse (40 °C) the vapour counts.
    private static readonly Temperature HotAbove = Temperature.FromDegreesCelsius(40);

    /// <summary>Warm enough that a shut tank is sucked in when it cools.</summary>
    public static bool IsHot(this Temperature? temperature) => temperature > HotAbove;

    /// <summary>Any liquid on the walls voids a bath that hasn't dried and a sanitizing.</summary>
    public static TankState Wetted(this TankState tank, LogEntry entry) =>
        (tank with { Bath = null, Sanitized = null, SanitizerIn = null, Contents = Contents.Nothing })
            .WithoutStretches()
            .WithSoil(tank.Soil is Soil.Sanitized ? Soil.Clean : tank.Soil, entry);

    /// <summary>A hot liquid leaves vapour behind; a cold one takes it away.</summary>
    public static TankState Heated(this TankState tank, bool isHot, LogEntry entry) =>
        tank with
        {
            Hot = isHot ? Moment.Of(entry) : null,
        };

    public static TankState WithSoil(this TankState tank, Soil soil, LogEntry entry) =>
        tank.Soil == soil ? tank : tank with { Soil = soil, SoilSince = Moment.Of(entry) };

    /// <summary>Chlorine is a chloride to steel. The first hurt of each sort is kept: the job it makes stands till the film is made anew.</summary>
    public static TankState Hurt(this TankState tank, Trigger by, LogEntry entry) =>
        tank.FilmHurt.Any(hurt => hurt.By == by)
            ? tank
            : tank with
            {
                FilmHurt = [.. tank.FilmHurt, new(Moment.Of(entry), by)],
            };

    public static TankState HurtByChlorine(this TankState tank, Agent agent, LogEntry entry) =>
        agent.HasChlorine() ? tank.Hurt(Trigger.Chloride, entry) : tank;
}
