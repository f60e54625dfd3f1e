using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>Sugar that makes a finished beer's gas in a closed vessel.</summary>
/// <param name="Sugar">Sucrose, kg, by Balling's gas from extract: 0.4629 g from a gram.</param>
/// <param name="Least">If all of it became gas and alcohol: 0.5143 g from a gram (four CO2 from a sucrose).</param>
/// <remarks>
/// Balling's balance, with the yeast that grows, and the molar masses. What the beer has not yet fermented comes on top: only
/// for a beer at its limit of attenuation.
/// </remarks>
public readonly record struct Priming(Mass Sugar, Mass Least)
{
    private const double ByBalling = 0.9565 / 2.0665;

    private const double ByChemistry = 4 * IdealGas.CarbonDioxide / 342.2965;

    /// <summary>For a beer.</summary>
    /// <param name="beer">0 to 10,000,000 L.</param>
    /// <param name="now">What it holds.</param>
    /// <param name="target">What it is to hold: at least as much.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Priming> For(Volume beer, CarbonDioxideContent now, CarbonDioxideContent target)
    {
        var refusal =
            Accepted.Litres(beer, "beer") ?? Accepted.Between(now.Volumes, 15, target.Volumes, "carbonation", "vol");
        return refusal is null
            ? Of(beer, CarbonDioxideContent.Found(target.GramsPerLitre - now.GramsPerLitre))
            : refusal;
    }

    /// <summary>For so much gas in each litre.</summary>
    internal static Priming Of(Volume beer, CarbonDioxideContent gas)
    {
        var kilograms = gas.GramsPerLitre * beer.Liters / 1000;
        return new Priming(Mass.FromKilograms(kilograms / ByBalling), Mass.FromKilograms(kilograms / ByChemistry));
    }
}
