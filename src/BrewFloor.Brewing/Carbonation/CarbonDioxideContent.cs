using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>CO2 dissolved in beer: by weight, or in volumes of gas per volume of beer.</summary>
/// <remarks>
/// A volume is a litre of gas at 0 °C and one atmosphere in a litre of beer: 1.9635 g/L for an ideal gas, which is used
/// here; 1.9766 for the real one (second virial coefficient -149 cm³/mol). Trade figures of 1.96 to 1.98 are the same
/// thing. Check CO-14.
/// </remarks>
public readonly record struct CarbonDioxideContent : IComparable<CarbonDioxideContent>
{
    private const double IdealGramsPerVolume = 1.9635;

    private readonly double _gramsPerLitre;

    private CarbonDioxideContent(double gramsPerLitre) => _gramsPerLitre = gramsPerLitre;

    /// <summary>One volume, g/L, as used here.</summary>
    public static MassConcentration PerVolume => MassConcentration.FromGramsPerLiter(IdealGramsPerVolume);

    /// <summary>One volume of the real gas, g/L: to compare with figures that mean it.</summary>
    public static MassConcentration PerRealVolume =>
        MassConcentration.FromGramsPerLiter(
            IdealGas.Grams(1, 1.01325, 273.15, IdealGas.CarbonDioxide)
                / (1 - (149e-6 * 101_325 / (IdealGas.Constant * 273.15)))
        );

    /// <summary>By weight, g/L.</summary>
    public MassConcentration ByWeight => MassConcentration.FromGramsPerLiter(_gramsPerLitre);

    /// <summary>In volumes.</summary>
    public double Volumes => _gramsPerLitre / IdealGramsPerVolume;

    internal double GramsPerLitre => _gramsPerLitre;

    /// <summary>From g/L.</summary>
    /// <param name="value">0 to 30 g/L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonDioxideContent> OfGramsPerLitre(double value) =>
        Accepted.Between(0, 30, value, "carbonation", "g/L") is { } refusal ? refusal : new CarbonDioxideContent(value);

    /// <summary>From volumes.</summary>
    /// <param name="value">0 to 15 volumes.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonDioxideContent> OfVolumes(double value) =>
        Accepted.Between(0, 15, value, "carbonation", "vol") is { } refusal
            ? refusal
            : new CarbonDioxideContent(value * IdealGramsPerVolume);

    /// <inheritdoc/>
    public int CompareTo(CarbonDioxideContent other) => _gramsPerLitre.CompareTo(other._gramsPerLitre);

    /// <summary>Flatter.</summary>
    public static bool operator <(CarbonDioxideContent left, CarbonDioxideContent right) => left.CompareTo(right) < 0;

    /// <summary>Livelier.</summary>
    public static bool operator >(CarbonDioxideContent left, CarbonDioxideContent right) => left.CompareTo(right) > 0;

    /// <summary>Flatter or equal.</summary>
    public static bool operator <=(CarbonDioxideContent left, CarbonDioxideContent right) => left.CompareTo(right) <= 0;

    /// <summary>Livelier or equal.</summary>
    public static bool operator >=(CarbonDioxideContent left, CarbonDioxideContent right) => left.CompareTo(right) >= 0;

    internal static CarbonDioxideContent Found(double gramsPerLitre) => new(gramsPerLitre);
}
