using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>What caustic does to a closed tank of CO2.</summary>
/// <param name="Left">Pressure left, kPa absolute.</param>
/// <param name="CarbonDioxide">Taken up, g.</param>
/// <param name="Caustic">Spent on it, g of sodium hydroxide: cleaner that is gone.</param>
/// <remarks>The masses are those of dry gas, 2 % on the safe side at 20 °C; the pressure counts the vapour.</remarks>
public readonly record struct CausticVacuum(Pressure Left, Mass CarbonDioxide, Mass Caustic);

/// <summary>Two ways in which cleaning crushes a closed tank. They warn: no number makes either safe, an open vent does.</summary>
/// <remarks>
/// Ideal gas; water vapour by Buck, 0 to 100 °C; 2 NaOH for each CO2. Checks CI-03 to CI-05.
/// </remarks>
public static class Vacuum
{
    private const double CausticMolarMass = 39.997; // g/mol

    /// <summary>Caustic sprayed into a sealed tank that holds CO2, all of it taken up.</summary>
    /// <param name="gas">Gas space, 0.01 to 10,000,000 L.</param>
    /// <param name="carbonDioxide">Of the dry gas, 0 to 100 %.</param>
    /// <param name="absolute">Before, 10 to 1,000 kPa absolute.</param>
    /// <param name="temperature">0 to 45 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CausticVacuum> ByCaustic(
        Volume gas,
        Ratio carbonDioxide,
        Pressure absolute,
        Temperature temperature
    )
    {
        var refusal =
            Accepted.SomeLitres(gas, "gas-space")
            ?? Accepted.Between(0, 100, carbonDioxide.Percent, "carbon-dioxide", "%")
            ?? Accepted.Between(10, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
            ?? Accepted.Between(0, 45, temperature.DegreesCelsius, "temperature", "°C");
        if (refusal is not null)
        {
            return refusal;
        }

        var vapour = VapourBar(temperature);
        var taken = (absolute.Bars - vapour) * carbonDioxide.DecimalFractions;
        var dry = absolute.Bars * carbonDioxide.DecimalFractions;
        var grams = IdealGas.Grams(gas.Liters, dry, temperature.Kelvins, IdealGas.CarbonDioxide);
        return new CausticVacuum(
            Pressure.FromKilopascals((absolute.Bars - taken) * 100),
            Mass.FromGrams(grams),
            Mass.FromGrams(2 * grams / IdealGas.CarbonDioxide * CausticMolarMass)
        );
    }

    /// <summary>Hot air, full of vapour, sealed and cooled: kPa absolute.</summary>
    /// <param name="hot">When it is sealed, 0 to 95 °C.</param>
    /// <param name="cold">0 °C to hot.</param>
    /// <param name="absolute">When it is sealed, above the vapour's own, to 1,000 kPa absolute. Steam alone ends lower.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Pressure> ByCooling(Temperature hot, Temperature cold, Pressure absolute)
    {
        var refusal =
            Accepted.Between(0, 95, hot.DegreesCelsius, "hot", "°C")
            ?? Accepted.Between(0, hot.DegreesCelsius, cold.DegreesCelsius, "cold", "°C")
            ?? Accepted.Between(10, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
            ?? Boiling(hot, absolute);
        if (refusal is not null)
        {
            return refusal;
        }

        var air = (absolute.Bars - VapourBar(hot)) * cold.Kelvins / hot.Kelvins;
        return Pressure.FromKilopascals((air + VapourBar(cold)) * 100);
    }

    // Hotter than water boils at that pressure there is no air left to reckon with.
    private static Refusal? Boiling(Temperature hot, Pressure absolute)
    {
        if (VapourBar(hot) <= absolute.Bars)
        {
            return null;
        }

        var boils = Rising.Where(t => VapourBar(Temperature.FromDegreesCelsius(t)), absolute.Bars, 0, 100);
        return Accepted.Between(0, Math.Floor(boils * 10) / 10, hot.DegreesCelsius, "hot", "°C");
    }

    // Buck, over water.
    internal static double VapourBar(Temperature temperature)
    {
        var t = temperature.DegreesCelsius;
        return 6.1121e-3 * Math.Exp((18.678 - (t / 234.5)) * t / (257.14 + t));
    }
}
