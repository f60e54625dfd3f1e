using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Extract;

/// <summary>What a volume of wort weighs, and what it holds.</summary>
/// <remarks>
/// Source: the definition of °P (g in 100 g) and water at 20 °C, 998.204 kg/m³ (Kell 1975); within 0.05 kg/m³. Hot wort
/// is brought to 20 °C first (<see cref="Volumes.Contraction"/>).
/// </remarks>
public static class Wort
{
    /// <summary>In kg.</summary>
    /// <param name="volume">At 20 °C, 0 to 10,000,000 L.</param>
    /// <param name="gravity">At 20 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> MassOf(Volume volume, SpecificGravity gravity) =>
        Accepted.Litres(volume, "volume") is { } refusal
            ? refusal
            : (volume * gravity.Density).ToUnit(MassUnit.Kilogram);

    /// <summary>Extract in a litre, g: 10 P times the density in kg/L.</summary>
    /// <param name="gravity">Of unfermented wort, 1.000 to 1.179.</param>
    /// <returns>Refused outside. In fermented beer an apparent extract would give an apparent mass, so don't.</returns>
    public static Outcome<MassConcentration> ExtractPerVolume(SpecificGravity gravity) =>
        Accepted.Between(1, 1.179, gravity.Value, "gravity") is { } refusal
            ? refusal
            : MassConcentration.FromGramsPerLiter(
                Math.Max(0, DegreesPlato.From(gravity).Value.Value) / 100 * gravity.Density.KilogramsPerCubicMeter
            );

    /// <summary>Extract in all of it, kg.</summary>
    /// <param name="volume">At 20 °C, 0 to 10,000,000 L.</param>
    /// <param name="gravity">Of unfermented wort, 1.000 to 1.179.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> ExtractIn(Volume volume, SpecificGravity gravity)
    {
        var held = ExtractPerVolume(gravity);
        return (Accepted.Litres(volume, "volume") ?? held.Refusal) is { } refusal
            ? refusal
            : Mass.FromKilograms(held.Value.GramsPerLiter * volume.Liters / 1000);
    }
}
