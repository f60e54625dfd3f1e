using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>One mark of a dip table that is made by weighing water in.</summary>
/// <param name="Level">In mm above the outlet plane.</param>
/// <param name="Water">All water in the tank so far, kg.</param>
public readonly record struct WeighedDip(Length Level, Mass Water);

/// <summary>Makes a dip table from weighed water: litres are kilograms over the water's density.</summary>
/// <remarks>Kell 1975. Buoyancy in air (0.1 %) is left out: smaller than a reading of the level.</remarks>
public static class WeighedDips
{
    /// <summary>The table.</summary>
    /// <param name="dips">From the lowest up, as for <see cref="DipTable.Measured"/>.</param>
    /// <param name="water">Its temperature, 0 to 60 °C.</param>
    /// <returns>Refused as there, and outside.</returns>
    public static Outcome<DipTable> From(IEnumerable<WeighedDip> dips, Temperature water)
    {
        if (RefusalOf(water) is { } refusal)
        {
            return refusal;
        }

        return DipTable.Measured(dips.Select(d => new DipPoint(d.Level, Litres(d.Water, water))));
    }

    /// <summary>The litres of weighed water.</summary>
    /// <param name="weighed">0 to 10,000,000 kg.</param>
    /// <param name="water">Its temperature, 0 to 60 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> VolumeOf(Mass weighed, Temperature water) =>
        (Accepted.Kilograms(weighed, "water") ?? RefusalOf(water)) is { } refusal ? refusal : Litres(weighed, water);

    private static Volume Litres(Mass weighed, Temperature water) =>
        Volume.FromLiters(weighed.Kilograms / (WaterDensity.Kell(water.DegreesCelsius) / 1000));

    private static Refusal? RefusalOf(Temperature water) =>
        Accepted.Between(0, 60, water.DegreesCelsius, "temperature", "°C");
}
