using BrewFloor.Brewing.Extract;
using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Volumes;

/// <summary>What a volume would be at 20 °C: the one temperature at which volumes may be compared.</summary>
/// <remarks>
/// V20 = V rho(t) / rho(20), water by Kell 1975. From 20 to 1 °C water shrinks by 0.17 % (check VO-03), beer by 0.2 to
/// 0.25 % (from memory): small against any dump, and no loss.
/// </remarks>
public static class Contraction
{
    /// <summary>In L at 20 °C.</summary>
    /// <param name="volume">As measured, 0 to 10,000,000 L.</param>
    /// <param name="measured">Temperature it was measured at, 0 to 100 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> To20(Volume volume, Temperature measured) =>
        RefusalOf(volume, measured) is { } refusal
            ? refusal
            : (volume * (WaterDensity.Kell(measured.DegreesCelsius) / WaterDensity.Kell(20))).ToUnit(VolumeUnit.Liter);

    /// <summary>In L at another temperature; the inverse of <see cref="To20"/>.</summary>
    /// <param name="at20">At 20 °C, 0 to 10,000,000 L.</param>
    /// <param name="temperature">0 to 100 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> From20(Volume at20, Temperature temperature) =>
        RefusalOf(at20, temperature) is { } refusal
            ? refusal
            : (at20 * (WaterDensity.Kell(20) / WaterDensity.Kell(temperature.DegreesCelsius))).ToUnit(VolumeUnit.Liter);

    private static Refusal? RefusalOf(Volume volume, Temperature temperature) =>
        Accepted.Litres(volume, "volume") ?? Accepted.Between(0, 100, temperature.DegreesCelsius, "temperature", "°C");
}
