using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>Mass per volume of pure water at one atmosphere.</summary>
/// <remarks>
/// Source: Kell 1975, J. Chem. Eng. Data 20:97, equation 16; within 0.003 kg/m³ of IAPWS-95 below 40 °C. An open reprint
/// has two digits of the denominator swapped; check VO-04 would see it.
/// </remarks>
public static class WaterDensity
{
    /// <summary>In kg/m³; 998.204 at 20 °C.</summary>
    /// <param name="temperature">0 to 150 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Density> At(Temperature temperature)
    {
        var t = temperature.DegreesCelsius;
        return Accepted.Between(0, 150, t, "temperature", "°C") is { } refusal
            ? refusal
            : Density.FromKilogramsPerCubicMeter(Kell(t));
    }

    internal static double Kell(double t) =>
        (
            999.83952
            + (
                t
                * (
                    16.945176
                    + (t * (-7.9870401e-3 + (t * (-46.170461e-6 + (t * (105.56302e-9 - (t * 280.54253e-12)))))))
                )
            )
        ) / (1 + (16.879850e-3 * t));
}
