using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The families of cleaner and sanitizer; the label of the product on the shelf comes first.</summary>
public enum Agent
{
    Alkaline,
    Caustic,
    Chlorinated,
    Acid,
    Peracetic,
    AcidAnionic,
    Iodophor,
    HotWater,
    Other,
}

/// <summary>What the floor must know about a family. CP: no published source; the label's numbers are typed at use.</summary>
public static class Agents
{
    /// <summary>Absorbs carbon dioxide: in a closed tank the walls are sucked in.</summary>
    public static bool IsAlkaline(this Agent agent) => agent is Agent.Alkaline or Agent.Caustic or Agent.Chlorinated;

    public static bool HasChlorine(this Agent agent) => agent is Agent.Chlorinated;

    /// <summary>Sets chlorine free from a chlorinated cleaner.</summary>
    public static bool IsAcid(this Agent agent) => agent is Agent.Acid or Agent.Peracetic or Agent.AcidAnionic;

    /// <summary>Foam fills the tank through a spray ball and starves the pump.</summary>
    public static bool Foams(this Agent agent) => agent is Agent.AcidAnionic or Agent.Iodophor;

    /// <summary>At what it goes through the tank, in °C; hot water that nobody measured counts as 82 °C, the least that sanitizes.</summary>
    public static Temperature? TemperatureOf(this Agent agent, Temperature? measured) =>
        measured ?? (agent is Agent.HotWater ? Temperature.FromDegreesCelsius(82) : null);

    public static bool IsSanitizer(this Agent agent) =>
        agent
            is Agent.Peracetic
                or Agent.AcidAnionic
                or Agent.Iodophor
                or Agent.Chlorinated
                or Agent.HotWater
                or Agent.Other;

    /// <summary>The shortest contact that counts, in minutes, where the label says no other.</summary>
    public static int LeastContactMinutes(this Agent agent) =>
        agent switch
        {
            Agent.AcidAnionic or Agent.Iodophor => 2,
            Agent.Peracetic => 5,
            Agent.Chlorinated => 10,
            Agent.HotWater => 20,
            Agent.Acid => 15,
            Agent.Alkaline or Agent.Caustic => 20,
            _ => 10,
        };
}

/// <summary>How a liquid meets the walls.</summary>
public enum Way
{
    SprayBall,
    Soak,
    ByHand,
}
