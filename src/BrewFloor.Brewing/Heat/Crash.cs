using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>Beer that is to be cooled, all of it at one temperature.</summary>
/// <param name="Beer">0.001 to 10,000,000 kg.</param>
/// <param name="Heat">Specific heat, 3 to 4.3 kJ/(kg K).</param>
/// <param name="From">-5 to 100 °C.</param>
/// <param name="To">-5 °C to where it starts.</param>
/// <remarks>
/// Q = m cp dT, t = m cp / UA ln((T0 - Tc) / (T1 - Tc)). Beer is densest near 3 °C: below it the layers turn over, so read
/// two thermometers. Checks HE-04, HE-05.
/// </remarks>
public readonly record struct Crash(Mass Beer, SpecificEntropy Heat, Temperature From, Temperature To)
{
    /// <summary>Heat to take out, kJ.</summary>
    /// <returns>Refused outside.</returns>
    public Outcome<Energy> Load() =>
        Refusal is { } refusal ? refusal : Energy.FromKilojoules(Capacity * (From.Kelvins - To.Kelvins));

    /// <summary>Time with a coolant that stays as cold as it is.</summary>
    /// <param name="passage">Through jacket or coil.</param>
    /// <param name="coolant">-30 °C to just below where it ends.</param>
    /// <returns>In h; refused outside.</returns>
    public Outcome<Duration> TimeWith(HeatPassage passage, Temperature coolant)
    {
        var refusal =
            Refusal
            ?? passage.Refusal
            ?? Accepted.Between(-30, To.DegreesCelsius - 0.01, coolant.DegreesCelsius, "coolant", "°C");
        return refusal is null
            ? Duration.FromHours(
                Capacity
                    * 1000
                    / passage.WattsPerKelvin
                    * Math.Log((From.Kelvins - coolant.Kelvins) / (To.Kelvins - coolant.Kelvins))
                    / 3600
            )
            : refusal;
    }

    /// <summary>The least time that a chiller's power allows: t = Q / (P - gains).</summary>
    /// <param name="chiller">0 to 10,000 kW.</param>
    /// <param name="gains">What else it must carry off meanwhile, 0 to 99 % of its power.</param>
    /// <returns>In h; refused outside.</returns>
    public Outcome<Duration> TimeBy(Power chiller, Power gains)
    {
        var refusal =
            Refusal
            ?? Accepted.Between(0.001, 10_000, chiller.InKilowatts(), "chiller", "kW")
            ?? Accepted.Between(0, 0.99 * chiller.InWatts(), gains.InWatts(), "gains", "W");
        return refusal is null
            ? Duration.FromHours(
                Capacity * (From.Kelvins - To.Kelvins) / (chiller.InKilowatts() - gains.InKilowatts()) / 3600
            )
            : refusal;
    }

    private double Capacity => Beer.Kilograms * Heat.KilojoulesPerKilogramKelvin;

    private Refusal? Refusal =>
        Accepted.Between(0.001, 1e7, Beer.Kilograms, "beer", "kg")
        ?? SpecificHeat.RefusalOf(Heat)
        ?? Accepted.Between(-5, 100, From.DegreesCelsius, "from", "°C")
        ?? Accepted.Between(-5, From.DegreesCelsius, To.DegreesCelsius, "to", "°C");
}
