using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>At which temperature a hydrometer floats true, as printed on its paper.</summary>
public enum HydrometerScale
{
    /// <summary>SG 20/20 °C.</summary>
    At20Celsius,

    /// <summary>SG 60/60 °F, which is 15.56 °C.</summary>
    At60Fahrenheit,
}

/// <summary>A hydrometer's reading, brought to 20 °C.</summary>
/// <param name="Gravity">20/20 °C.</param>
/// <param name="IsInKnownRange">
/// From 1.000 to 1.060, or read where the hydrometer floats true; elsewhere the ± of
/// <see cref="HydrometerCorrection.PlusMinus"/> is not known to hold.
/// </param>
public readonly record struct CorrectedGravity(SpecificGravity Gravity, bool IsInKnownRange);

/// <summary>Brings what a hydrometer shows in a warm or cold sample to 20 °C.</summary>
/// <remarks>
/// The glass grows and the wort is taken to grow as water does; real wort grows a little more, which at 40 °C makes up to
/// 0.0005. By the same reading a 60/60 °F scale, corrected, is a 20/20 °C one. Bubbles, yeast and surface tension disturb
/// by 0.0005 to 0.002 (common practice, no source): shake the gas out first. Sources: Kell 1975 (water), ISO 1768:1975
/// (glass, 25e-6 per °C). Checks EX-20 to EX-23.
/// </remarks>
public static class HydrometerCorrection
{
    /// <summary>What remains uncertain between 0 and 40 °C, in SG.</summary>
    public const double PlusMinus = 0.0005;

    private const double GlassPerDegree = 25e-6;

    /// <summary>The gravity at 20 °C behind a reading.</summary>
    /// <param name="reading">As read on the stem, in the instrument's own scale.</param>
    /// <param name="sample">Of the sample, 0 to 40 °C.</param>
    /// <param name="scale">Printed on the instrument.</param>
    /// <returns>Refused outside 0 to 40 °C (cool the sample), and where the answer is not 0.98 to 1.20.</returns>
    public static Outcome<CorrectedGravity> At20(SpecificGravity reading, Temperature sample, HydrometerScale scale)
    {
        var (t, floatsTrue) = (sample.DegreesCelsius, TrueAt(scale));
        if (Accepted.Between(0, 40, t, "sample-temperature", "°C") is { } refusal)
        {
            return refusal;
        }

        var glass = 1 - (GlassPerDegree * (t - floatsTrue));
        var water = WaterDensity.Kell(floatsTrue) / WaterDensity.Kell(t);
        var corrected = SpecificGravity.Found(reading.Value * glass * water);
        return corrected.Gives(out var gravity)
            ? new CorrectedGravity(gravity, t.Equals(floatsTrue) || reading.Value is >= 1 and <= 1.060)
            : corrected.Refusal!;
    }

    private static double TrueAt(HydrometerScale scale) =>
        scale switch
        {
            HydrometerScale.At20Celsius => 20,
            HydrometerScale.At60Fahrenheit => (60 - 32) / 1.8,
            _ => throw new ArgumentOutOfRangeException(nameof(scale), scale, "Not a scale."),
        };
}
