using UnitsNet;

namespace BrewFloor.Brewing.Hops;

/// <summary>What a dry hop takes and costs.</summary>
/// <param name="Pellets">In kg.</param>
/// <param name="Loss">Beer that stays in the sludge, L: 6 for a kilogram.</param>
/// <param name="LossLow">4 for a kilogram.</param>
/// <param name="LossHigh">8 for a kilogram.</param>
/// <remarks>
/// Mass by dose; the loss is common practice, no primary source (computed from an assumed moisture of 87 to 90 % it is 4 to
/// 5.5 L): replace it by the site's own. More than about 8 g/L adds little (Lafontaine, Shellhammer 2018, seen through a
/// lecture summary).
/// </remarks>
public readonly record struct DryHop(Mass Pellets, Volume Loss, Volume LossLow, Volume LossHigh)
{
    /// <summary>From here on more hops add little: 8 g/L.</summary>
    public static MassConcentration Enough => MassConcentration.FromGramsPerLiter(8);

    /// <summary>How much of the hops' dry matter goes into the beer in a day at 13 °C: a third (Hauser et al. 2019; check DH-01).</summary>
    public static Ratio Extracted => Ratio.FromDecimalFractions(1.0 / 3);

    /// <summary>Alpha acids that stay in the hops (the same).</summary>
    public static Ratio AlphaKept => Ratio.FromPercent(77);

    /// <summary>Oil that stays in the hops (the same).</summary>
    public static Ratio OilKept => Ratio.FromPercent(51);

    /// <summary>Alpha acids and oil that stayed in an industrial dry hop of 1,592 g/hL (the same; check DH-02).</summary>
    public static (Ratio Alpha, Ratio Oil) KeptInIndustry => (Ratio.FromPercent(52), Ratio.FromPercent(33));

    /// <summary>For a beer.</summary>
    /// <param name="beer">0 to 10,000,000 L.</param>
    /// <param name="dose">0 to 40 g/L; a pound on a US barrel is 3.865.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<DryHop> For(Volume beer, MassConcentration dose) =>
        (Accepted.Litres(beer, "beer") ?? Accepted.Between(0, 40, dose.GramsPerLiter, "dose", "g/L")) is { } refusal
            ? refusal
            : From(beer.Liters * dose.GramsPerLiter / 1000);

    private static DryHop From(double kilograms) =>
        new(
            Mass.FromKilograms(kilograms),
            Volume.FromLiters(6 * kilograms),
            Volume.FromLiters(4 * kilograms),
            Volume.FromLiters(8 * kilograms)
        );
}
