using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>What a mass of extract turned into.</summary>
/// <param name="CarbonDioxide">In kg.</param>
/// <param name="Ethanol">In kg.</param>
/// <param name="DryYeast">In kg.</param>
public readonly record struct FermentationYield(Mass CarbonDioxide, Mass Ethanol, Mass DryYeast);

/// <summary>Balling's balance: 2.0665 g of extract give 1 g of alcohol, 0.9565 g of CO2 and 0.11 g of dry yeast.</summary>
/// <remarks>
/// One original extract only: sugar, fruit, water or another beer added later breaks the balance. Sources: Nielsen,
/// Kristiansen, Krieger Lassen, Erikstrøm 2007 (Scandinavian School of Brewing); Savel, Kosin, Broz 2015, Kvasny Prum.
/// 61:120; Speers 2015. Checks EX-10 to EX-13, EX-15, EX-16, EX-19.
/// </remarks>
public static class Balling
{
    private const double ExtractPerAlcohol = 2.0665;

    private const double CarbonDioxidePerAlcohol = 0.9565;

    private const double YeastPerAlcohol = 0.11;

    // Ethanol over water at 20 °C, 789.24 / 998.204 kg/m³.
    private const double EthanolGravity = 0.79066;

    private const double LeastApparent = -1.31;

    /// <summary>What the wort was: OE = 100 (2.0665 A + RE) / (100 + 1.0665 A).</summary>
    /// <param name="alcohol">By weight, 0 to 20 %.</param>
    /// <param name="real">Real extract, 0 to 40 °P.</param>
    /// <returns>In °P; refused outside.</returns>
    public static Outcome<DegreesPlato> OriginalExtract(MassFraction alcohol, DegreesPlato real)
    {
        var a = alcohol.Percent;
        var refusal =
            Accepted.Between(0, 20, a, "alcohol-by-weight", "%")
            ?? Accepted.Between(0, 40, real.Value, "real-extract", "°P");
        return refusal is null
            ? new DegreesPlato(100 * ((ExtractPerAlcohol * a) + real.Value) / (100 + ((ExtractPerAlcohol - 1) * a)))
            : refusal;
    }

    /// <summary>Alcohol by weight: A = (OE - RE) / (2.0665 - 0.010665 OE), the inverse of <see cref="OriginalExtract"/>.</summary>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="real">0 °P to the original extract.</param>
    /// <returns>In % w/w; refused outside.</returns>
    public static Outcome<MassFraction> Alcohol(DegreesPlato original, DegreesPlato real) =>
        (RefusalOf(original) ?? RefusalOfReal(real, original)) is { } refusal
            ? refusal
            : MassFraction.FromPercent(
                (original.Value - real.Value) / (ExtractPerAlcohol - ((ExtractPerAlcohol - 1) / 100 * original.Value))
            );

    /// <summary>Real extract behind an apparent one: RE = OE - q (OE - AE).</summary>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="apparent">-1.31 °P to the original extract.</param>
    /// <param name="quotient">0.81 unless chosen.</param>
    /// <returns>In °P; refused outside.</returns>
    public static Outcome<DegreesPlato> RealExtract(
        DegreesPlato original,
        DegreesPlato apparent,
        AttenuationQuotient quotient = default
    ) =>
        RefusalOf(original, apparent) is { } refusal
            ? refusal
            : new DegreesPlato(original.Value - (quotient.Value * (original.Value - apparent.Value)));

    /// <summary>Apparent degree of fermentation: 100 (OE - AE) / OE; above 100 % in a very dry beer.</summary>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="apparent">-1.31 °P to the original extract.</param>
    /// <returns>In %; refused outside.</returns>
    /// <remarks>Source: ASBC Beer-6 as quoted by Speers 2015.</remarks>
    public static Outcome<Ratio> ApparentDegree(DegreesPlato original, DegreesPlato apparent) =>
        RefusalOf(original, apparent) is { } refusal
            ? refusal
            : Ratio.FromPercent(100 * (original.Value - apparent.Value) / original.Value);

    /// <summary>Real degree of fermentation: 100 (OE - RE) / OE / (1 - 0.005161 RE).</summary>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="real">0 °P to the original extract.</param>
    /// <returns>In %; refused outside.</returns>
    /// <remarks>Source: ASBC Beer-6 as quoted by Speers 2015.</remarks>
    public static Outcome<Ratio> RealDegree(DegreesPlato original, DegreesPlato real) =>
        (RefusalOf(original) ?? RefusalOfReal(real, original)) is { } refusal
            ? refusal
            : Ratio.FromPercent(100 * (original.Value - real.Value) / original.Value / (1 - (0.005161 * real.Value)));

    /// <summary>Alcohol by volume at 20 °C: A times the beer's gravity over that of ethanol, 0.79066.</summary>
    /// <param name="alcohol">By weight, 0 to 20 %.</param>
    /// <param name="beer">The beer's gravity.</param>
    /// <returns>In % v/v; refused outside.</returns>
    public static Outcome<VolumeConcentration> AlcoholByVolume(MassFraction alcohol, SpecificGravity beer) =>
        Accepted.Between(0, 20, alcohol.Percent, "alcohol-by-weight", "%") is { } refusal
            ? refusal
            : VolumeConcentration.FromPercent(alcohol.Percent * beer.Value / EthanolGravity);

    /// <summary>Beer left of a wort, without its gas and its new yeast: wort / (1 + 0.010665 A).</summary>
    internal static Mass BeerFrom(Mass wort, MassFraction alcohol) =>
        Mass.FromKilograms(wort.Kilograms / (1 + ((ExtractPerAlcohol - 1) / 100 * alcohol.Percent)));

    /// <summary>0.4629 kg of CO2, 0.4839 kg of ethanol and 0.0532 kg of dry yeast from 1 kg of real extract.</summary>
    /// <param name="extract">Real extract that fermented, in kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">Less than nothing: a caller's bug.</exception>
    public static FermentationYield YieldOf(Mass extract)
    {
        if (extract < Mass.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(extract), extract, "Expected 0 or more.");
        }

        var ethanol = Mass.FromKilograms(extract.Kilograms / ExtractPerAlcohol);
        return new FermentationYield(ethanol * CarbonDioxidePerAlcohol, ethanol, ethanol * YeastPerAlcohol);
    }

    internal static Refusal? RefusalOf(DegreesPlato original, DegreesPlato apparent) =>
        RefusalOf(original)
        ?? Accepted.Between(LeastApparent, original.Value, apparent.Value, "apparent-extract", "°P");

    private static Refusal? RefusalOf(DegreesPlato original) =>
        Accepted.Between(1, 40, original.Value, "original-extract", "°P");

    private static Refusal? RefusalOfReal(DegreesPlato real, DegreesPlato original) =>
        Accepted.Between(0, original.Value, real.Value, "real-extract", "°P");
}
