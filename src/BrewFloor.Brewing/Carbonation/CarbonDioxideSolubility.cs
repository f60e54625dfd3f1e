using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>How much CO2 a liquid holds once it has come to rest under CO2.</summary>
/// <remarks>
/// Source: Carroll, Slupsky, Mather 1991, J. Phys. Chem. Ref. Data 20:1201 (Henry's constant of water, 0 to 160 °C, below
/// 1 MPa), with Kell's water density. Beer takes 0.94 of it: our fit to 136 cells of a printed carbonation chart (Brewing
/// Techniques 2(1), Table I), 0 to 8 °C. Honest to 3 % (one standard error); above 8 °C the factor rests on water alone.
/// Checks CO-11, CO-13, CO-15.
/// </remarks>
public static class CarbonDioxideSolubility
{
    private const double BeerOverWater = 0.94;

    private const double WaterMolarMass = 18.01528;

    internal const double MolarMass = IdealGas.CarbonDioxide;

    /// <summary>In pure water, g/L.</summary>
    /// <param name="temperature">0 to 40 °C.</param>
    /// <param name="absolute">Pressure of the CO2, 0 to 1,000 kPa absolute.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassConcentration> InWater(Temperature temperature, Pressure absolute) =>
        (RefusalOf(temperature, "temperature") ?? RefusalOf(absolute)) is { } refusal
            ? refusal
            : MassConcentration.FromGramsPerLiter(WaterPerBar(temperature) * absolute.Bars);

    /// <summary>In beer, g/L.</summary>
    /// <param name="temperature">0 to 40 °C.</param>
    /// <param name="absolute">Pressure of the CO2, 0 to 1,000 kPa absolute; all of it when the headspace is CO2.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassConcentration> InBeer(Temperature temperature, Pressure absolute) =>
        InWater(temperature, absolute) switch
        {
            { Refusal: { } refusal } => refusal,
            { Value: var water } => water * BeerOverWater,
        };

    /// <summary>In pure water near room temperature, g/L: a second opinion with two constants.</summary>
    /// <param name="temperature">15 to 35 °C: at 0 °C this form is 8 % low.</param>
    /// <param name="absolute">Pressure of the CO2, 0 to 1,000 kPa absolute.</param>
    /// <returns>Refused outside.</returns>
    /// <remarks>
    /// Source: Sander 2015, ACP 15:4399, and 2023, ACP 23:10901: 3.4e-4 mol/(m³ Pa) at 25 °C, 2300 K. Check CO-12.
    /// </remarks>
    public static Outcome<MassConcentration> InWaterBySander(Temperature temperature, Pressure absolute)
    {
        var refusal = Accepted.Between(15, 35, temperature.DegreesCelsius, "temperature", "°C") ?? RefusalOf(absolute);
        var moles = 3.4e-4 * Math.Exp(2300 * ((1 / temperature.Kelvins) - (1 / 298.15))) * absolute.Pascals;
        return refusal is null ? MassConcentration.FromGramsPerCubicMeter(moles * MolarMass) : refusal;
    }

    /// <summary>Grams per litre of beer and bar, for sums over a whole tank.</summary>
    internal static double BeerPerBar(Temperature temperature) => BeerOverWater * WaterPerBar(temperature);

    internal static Refusal? RefusalOf(Temperature temperature, string what) =>
        Accepted.Between(0, 40, temperature.DegreesCelsius, what, "°C");

    internal static Refusal? RefusalOf(Pressure absolute) =>
        Accepted.Between(0, 1000, absolute.Kilopascals, "pressure-absolute", "kPa");

    private static double WaterPerBar(Temperature temperature)
    {
        var t = temperature.Kelvins;
        var henry = Math.Exp(-6.8346 + (1.2817e4 / t) - (3.7668e6 / (t * t)) + (2.997e8 / (t * t * t))); // MPa
        var fraction = 0.1 / henry; // of the moles, at 1 bar
        return fraction / (1 - fraction) * WaterDensity.Kell(temperature.DegreesCelsius) / WaterMolarMass * MolarMass;
    }
}
