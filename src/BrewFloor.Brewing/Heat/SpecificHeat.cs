using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>Heat that a kilogram takes for each kelvin.</summary>
/// <remarks>Wort of 12 °P 3.9 to 4.0, beer 4.05 (common practice, from a trade text); water 4.18 kJ/(kg K).</remarks>
public static class SpecificHeat
{
    /// <summary>Wort of 12 °P.</summary>
    public static SpecificEntropy Wort => SpecificEntropy.FromKilojoulesPerKilogramKelvin(4.0);

    /// <summary>Beer.</summary>
    public static SpecificEntropy Beer => SpecificEntropy.FromKilojoulesPerKilogramKelvin(4.05);

    /// <summary>Water.</summary>
    public static SpecificEntropy Water => SpecificEntropy.FromKilojoulesPerKilogramKelvin(4.18);

    internal static Refusal? RefusalOf(SpecificEntropy heat) =>
        Accepted.Between(3, 4.3, heat.KilojoulesPerKilogramKelvin, "specific-heat", "kJ/(kg K)");
}

/// <summary>Heat that goes through walls and coils for each kelvin: area times U.</summary>
/// <param name="WattsPerKelvin">In W/K.</param>
/// <remarks>
/// U, from memory or common practice: jacket with glycol 80 to 250, immersed coil 150 to 400, bare wall 5 to 10 W/(m² K);
/// below 4 °C half of it. Better: <see cref="CoolDown"/>.
/// </remarks>
public readonly record struct HeatPassage(double WattsPerKelvin)
{
    /// <summary>Area times U.</summary>
    /// <param name="area">0 to 10,000 m².</param>
    /// <param name="coefficient">0 to 5,000 W/(m² K).</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<HeatPassage> Of(Area area, HeatTransferCoefficient coefficient) =>
        (
            Accepted.Between(0, 10_000, area.SquareMeters, "area", "m²")
            ?? Accepted.Between(0, 5000, coefficient.WattsPerSquareMeterKelvin, "u-value", "W/(m² K)")
        )
            is { } refusal
            ? refusal
            : new HeatPassage(area.SquareMeters * coefficient.WattsPerSquareMeterKelvin);

    internal Refusal? Refusal => Accepted.Between(0.01, 1e7, WattsPerKelvin, "heat-passage", "W/K");
}
