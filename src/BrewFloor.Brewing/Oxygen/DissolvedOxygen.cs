using BrewFloor.Brewing.Cleaning;
using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Oxygen;

/// <summary>Oxygen that water, beer or wort takes up at rest under a gas.</summary>
/// <remarks>
/// Water: Benson, Krause 1984 in the APHA form, mg/L in moist air at one atmosphere, 0 to 40 °C; scaled by the dry pressure
/// and the oxygen's share. Beer is taken as water, 15 % either way. Wort takes up less: 1 - 0.0189 P, our line through the
/// two published values at 15 °P (Oxford Companion to Beer 2012: 6.6 mg/L at 20 °C, 8.0 at 10 °C), within 0.1 mg/L of
/// both. Checks OX-01 to OX-04, OX-10.
/// </remarks>
public static class DissolvedOxygen
{
    private const double LessPerPlato = 0.0189;

    private const double OneAtmosphere = 1.01325; // bar

    private const double ShareInMoistAir = 0.20946;

    /// <summary>In water or beer, mg/L.</summary>
    /// <param name="temperature">0 to 40 °C.</param>
    /// <param name="absolute">Of the moist gas, from the vapour's own pressure to 1,000 kPa absolute.</param>
    /// <param name="oxygen">Of the dry gas, 0 to 100 %; air has 20.95.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassConcentration> InWater(
        Temperature temperature,
        Pressure absolute,
        VolumeConcentration oxygen
    )
    {
        if (Accepted.Between(0, 40, temperature.DegreesCelsius, "temperature", "°C") is { } refusal)
        {
            return refusal;
        }

        var vapour = Vacuum.VapourBar(temperature);
        var outside =
            Accepted.Between(vapour * 100, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
            ?? Accepted.Between(0, 100, oxygen.Percent, "oxygen", "%");
        return outside is null
            ? MassConcentration.FromMilligramsPerLiter(
                InMoistAir(temperature.Kelvins)
                    * ((absolute.Bars - vapour) / (OneAtmosphere - vapour))
                    * (oxygen.DecimalFractions / ShareInMoistAir)
            )
            : outside;
    }

    /// <summary>In wort under air at one atmosphere, mg/L.</summary>
    /// <param name="temperature">0 to 40 °C; published at 10 and 20.</param>
    /// <param name="wort">0 to 25 °P; published at 15.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassConcentration> InWort(Temperature temperature, DegreesPlato wort) =>
        InWort(temperature, wort, Pressure.FromBars(OneAtmosphere));

    /// <summary>In wort under the air of a place, mg/L.</summary>
    /// <param name="temperature">0 to 40 °C; published at 10 and 20.</param>
    /// <param name="wort">0 to 25 °P; published at 15.</param>
    /// <param name="air">Its pressure, from the vapour's own to 1,000 kPa absolute.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassConcentration> InWort(Temperature temperature, DegreesPlato wort, Pressure air) =>
        Accepted.Between(0, 25, wort.Value, "original-extract", "°P") is { } refusal
            ? refusal
            : InWater(temperature, air, VolumeConcentration.FromDecimalFractions(ShareInMoistAir))
                .Select(water => water * (1 - (LessPerPlato * wort.Value)));

    private static double InMoistAir(double t) =>
        Math.Exp(
            -139.34411
                + (1.575701e5 / t)
                - (6.642308e7 / (t * t))
                + (1.243800e10 / (t * t * t))
                - (8.621949e11 / (t * t * t * t))
        );
}
