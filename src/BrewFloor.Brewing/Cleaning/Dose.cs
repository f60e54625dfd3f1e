using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>How much of a product goes into water. The label comes first; add acid and alkali to water, never the reverse.</summary>
/// <remarks>Mass balance. Checks CI-09, CI-21.</remarks>
public static class Dose
{
    /// <summary>Powder for a solution given in weight by volume (1 % w/v is 10 g in a litre), kg.</summary>
    /// <param name="solution">0 to 100,000 L.</param>
    /// <param name="strength">0 to 500 g/L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> OfPowder(Volume solution, MassConcentration strength) =>
        (RefusalOf(solution) ?? Accepted.Between(0, 500, strength.GramsPerLiter, "strength", "g/L")) is { } refusal
            ? refusal
            : Mass.FromKilograms(solution.Liters * strength.GramsPerLiter / 1000);

    /// <summary>Pure stuff for a bath given in weight by weight, kg: w / (1 - w) of the water's weight.</summary>
    /// <param name="water">0 to 100,000 kg.</param>
    /// <param name="strength">0 to 50 % of the whole bath.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> IntoWater(Mass water, MassFraction strength) =>
        (
            Accepted.Between(0, 100_000, water.Kilograms, "water", "kg")
            ?? Accepted.Between(0, 50, strength.Percent, "strength", "%")
        )
            is { } refusal
            ? refusal
            : Mass.FromKilograms(water.Kilograms * strength.DecimalFractions / (1 - strength.DecimalFractions));

    /// <summary>Concentrate for a solution by its active part, L: ppm / (10 percent density) in mL/L.</summary>
    /// <param name="solution">0 to 100,000 L.</param>
    /// <param name="active">Wanted, mg/L (ppm), 0 to 100,000, and no more than the concentrate holds.</param>
    /// <param name="concentrate">Active part of the concentrate, 0.1 to 100 % by weight.</param>
    /// <param name="density">Of the concentrate, 0.7 to 2 kg/L.</param>
    /// <returns>Refused outside. Peracetic acid decays in store: check by strip.</returns>
    public static Outcome<Volume> OfConcentrate(
        Volume solution,
        MassConcentration active,
        MassFraction concentrate,
        Density density
    )
    {
        var whole = 10_000 * concentrate.Percent * density.KilogramsPerLiter; // mg/L in the concentrate itself
        var refusal =
            RefusalOf(solution)
            ?? Accepted.Between(0.1, 100, concentrate.Percent, "concentrate", "%")
            ?? Accepted.Between(0.7, 2, density.KilogramsPerLiter, "density", "kg/L")
            ?? Accepted.Between(0, Math.Min(100_000, whole), active.MilligramsPerLiter, "active", "mg/L");
        return refusal is null ? Volume.FromLiters(solution.Liters * active.MilligramsPerLiter / whole) : refusal;
    }

    /// <summary>Stock for a weaker solution, L, filled up with water to the volume: c1 V1 = c2 V2.</summary>
    /// <param name="solution">0 to 100,000 L.</param>
    /// <param name="wanted">0 g/L to the stock's.</param>
    /// <param name="stock">0.001 to 2,000 g/L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> OfStock(Volume solution, MassConcentration wanted, MassConcentration stock) =>
        (
            RefusalOf(solution)
            ?? Accepted.Between(0.001, 2000, stock.GramsPerLiter, "stock", "g/L")
            ?? Accepted.Between(0, stock.GramsPerLiter, wanted.GramsPerLiter, "strength", "g/L")
        )
            is { } refusal
            ? refusal
            : Volume.FromLiters(solution.Liters * wanted.GramsPerLiter / stock.GramsPerLiter);

    /// <summary>A label's "so much on so much", mL/L: one US fluid ounce on a gallon is 7.8125.</summary>
    /// <param name="product">0 to 1,000 L.</param>
    /// <param name="water">0.01 to 100,000 L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<VolumeConcentration> Of(Volume product, Volume water) =>
        (
            Accepted.Between(0, 1000, product.Liters, "product", "L")
            ?? Accepted.Between(0.01, 100_000, water.Liters, "water", "L")
        )
            is { } refusal
            ? refusal
            : VolumeConcentration.FromMillilitersPerLiter(product.Liters / water.Liters * 1000);

    private static Refusal? RefusalOf(Volume solution) =>
        Accepted.Between(0, 100_000, solution.Liters, "solution", "L");
}
