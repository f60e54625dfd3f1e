using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>What a chemical does to another, to the tank's material and to its gas. The label and its data sheet come first.</summary>
public static class Chemistry
{
    /// <summary>Of a sealed tank of CO2 at the air's pressure and 20 °C this is left when an alkaline cleaner has taken it up.</summary>
    /// <remarks>0.07 bar absolute: ideal gas and water vapour after Buck, 95 % CO2; check CI-03.</remarks>
    private static readonly Pressure LeftOfCarbonDioxide = Pressure.FromKilopascals(7);

    /// <summary>Stop!: chlorine and acid or peracetic with no rinse between, either order. Stop: chlorine on stainless.</summary>
    /// <remarks>Hypochlorite pits stainless even cold: Nickel Institute 11003, BSSA; the club uses none (common practice).</remarks>
    public static IEnumerable<Objection> Chlorine(Tank tank, TankState state, Agent agent)
    {
        if (
            state.ChemicalOnWalls is { } other
            && ((agent.HasChlorine() && other.IsAcid()) || (agent.IsAcid() && other.HasChlorine()))
        )
        {
            yield return Objection.HardStop("chlorine-meets-acid", new Number("tank", tank.Code));
        }

        if (agent.HasChlorine() && tank.IsStainless)
        {
            yield return Objection.Stop("chlorine-on-steel", new Number("tank", tank.Code));
        }
    }

    /// <summary>Stop!: an alkaline cleaner, hot or cold, under pressure, or while the gas is CO2 or unknown.</summary>
    public static IEnumerable<Objection> Alkaline(Tank tank, TankState state, Agent agent)
    {
        if (!agent.IsAlkaline())
        {
            yield break;
        }

        foreach (var objection in PressureGuards.Opening(tank, state))
        {
            yield return objection;
        }

        if (state.Gas is not Gas.Air)
        {
            yield return Objection.HardStop(
                "alkaline-under-co2",
                new("tank", tank.Code),
                new("absolute", LeftOfCarbonDioxide)
            );
        }
    }

    /// <summary>Stop!: hotter than the tank's weakest part stands.</summary>
    public static IEnumerable<Objection> TooHot(Tank tank, Temperature? temperature)
    {
        if (temperature is { } hot && hot > tank.HighestCleaning)
        {
            yield return Objection.HardStop(
                "too-hot-for-tank",
                new("tank", tank.Code),
                new("temperature", hot),
                new("highest", tank.HighestCleaning)
            );
        }
    }

    /// <summary>Caution: shorter than the label says, or where none was typed, than the family wants.</summary>
    public static IEnumerable<Objection> ContactShort(Tank tank, Agent agent, Duration? contact, Duration? label)
    {
        var least = label ?? Duration.FromMinutes(agent.LeastContactMinutes());
        if (contact is { } minutes && minutes.Minutes < least.Minutes)
        {
            yield return Objection.Caution(
                "contact-short",
                new("tank", tank.Code),
                new("contact", minutes),
                new("least", least)
            );
        }
    }
}
