using UnitsNet;

namespace BrewFloor.Brewing.Transfers;

/// <summary>Gas that takes the place of beer.</summary>
/// <remarks>Ideal gas; a closed loop with a gas line back takes none. Checks OX-08, TR-03.</remarks>
public static class PushGas
{
    /// <summary>CO2 to push a volume out, kg.</summary>
    /// <param name="volume">0 to 10,000,000 L.</param>
    /// <param name="absolute">Pressure above the beer, 0 to 1,000 kPa absolute.</param>
    /// <param name="temperature">-5 to 40 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> For(Volume volume, Pressure absolute, Temperature temperature) =>
        (
            Accepted.Litres(volume, "volume")
            ?? Accepted.Between(0, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
            ?? Accepted.Between(-5, 40, temperature.DegreesCelsius, "temperature", "°C")
        )
            is { } refusal
            ? refusal
            : Mass.FromKilograms(
                IdealGas.Grams(volume.Liters, absolute.Bars, temperature.Kelvins, IdealGas.CarbonDioxide) / 1000
            );

    /// <summary>Where the pressure goes when a closed vessel is filled with its vent shut, kPa absolute.</summary>
    /// <param name="vessel">All of it, 0.01 to 10,000,000 L, empty at first.</param>
    /// <param name="filled">0 to 99 % of it, L.</param>
    /// <param name="absolute">Before, 0 to 1,000 kPa absolute.</param>
    /// <returns>Refused outside. It warns; gas must leave as fast as beer comes.</returns>
    /// <remarks>Source: Boyle; beer taking up gas is left out.</remarks>
    public static Outcome<Pressure> InSealedReceiver(Volume vessel, Volume filled, Pressure absolute) =>
        (
            Accepted.SomeLitres(vessel, "vessel")
            ?? Accepted.Between(0, 0.99 * vessel.Liters, filled.Liters, "filled", "L")
            ?? Accepted.Between(0, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
        )
            is { } refusal
            ? refusal
            : Pressure.FromKilopascals(absolute.Kilopascals * vessel.Liters / (vessel.Liters - filled.Liters));
}
