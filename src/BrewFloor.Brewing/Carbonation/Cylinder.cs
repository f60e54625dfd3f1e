using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>A CO2 cylinder on a scale.</summary>
/// <param name="Gross">What it weighs now, kg.</param>
/// <param name="Tare">Empty weight as stamped, kg.</param>
/// <param name="Size">Water volume as stamped, L.</param>
/// <remarks>
/// The gauge says nothing while liquid is left: only the scale does. What stays behind at the working pressure is gas
/// (ideal gas, mass balance).
/// </remarks>
public readonly record struct Cylinder(Mass Gross, Mass Tare, Volume Size)
{
    /// <summary>CO2 it still gives, kg; nothing when only gas below the working pressure is left.</summary>
    /// <param name="temperature">-20 to 50 °C.</param>
    /// <param name="working">Pressure down to which it gives, 0 to 3,000 kPa gauge at the sea.</param>
    /// <returns>Refused outside, and for a cylinder lighter than its tare.</returns>
    public Outcome<Mass> StillGives(Temperature temperature, Pressure working)
    {
        var refusal =
            Accepted.Between(0, 1000, Tare.Kilograms, "tare", "kg")
            ?? Accepted.Between(Tare.Kilograms, 2000, Gross.Kilograms, "gross", "kg")
            ?? Accepted.Between(0, 200, Size.Liters, "cylinder-size", "L")
            ?? Accepted.Between(-20, 50, temperature.DegreesCelsius, "temperature", "°C")
            ?? Accepted.Between(0, 3000, working.Kilopascals, "pressure-gauge", "kPa");
        if (refusal is not null)
        {
            return refusal;
        }

        var behind = IdealGas.Grams(Size.Liters, working.Bars + 1.01325, temperature.Kelvins, IdealGas.CarbonDioxide);
        return Mass.FromKilograms(Math.Max(0, Gross.Kilograms - Tare.Kilograms - (behind / 1000)));
    }

    /// <summary>How many times it gives a mass in full.</summary>
    /// <param name="still">What it still gives.</param>
    /// <param name="each">What one use takes, 0.001 to 1,000 kg.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<int> Uses(Mass still, Mass each) =>
        (
            Accepted.Between(0.001, 1000, each.Kilograms, "each", "kg")
            ?? Accepted.Between(0, 2000, still.Kilograms, "still", "kg")
        )
            is { } refusal
            ? refusal
            : (int)Math.Floor((still.Kilograms / each.Kilograms) + 1e-9);
}
