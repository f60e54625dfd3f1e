using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Hops;

/// <summary>What hops and yeast together may still ferment, at worst.</summary>
/// <param name="RealFall">Real extract that goes, °P.</param>
/// <param name="Gas">CO2 it makes.</param>
/// <param name="Alcohol">Alcohol it makes, by volume.</param>
/// <remarks>
/// 2.0 (1 - exp(-0.139 t)) °P: one exponential through both points of the worst published case (10 g/L Cascade pellets,
/// a million cells in a millilitre, 20 °C; Kirkpatrick, Shellhammer 2018, J. Agric. Food Chem., abstract). From nothing to
/// this is possible: another hop may do far less. Any dry hop with yeast reopens "finished". Checks KI-06, KI-07.
/// </remarks>
public readonly record struct HopCreep(DegreesPlato RealFall, CarbonDioxideContent Gas, VolumeConcentration Alcohol)
{
    private const double End = 2.0;

    private const double PerDay = 0.139;

    /// <summary>Beyond 40 days nothing was published.</summary>
    public static TimeSpan DataEnd => TimeSpan.FromDays(40);

    /// <summary>At worst after so long.</summary>
    /// <param name="contact">0 to 60 days; the data end at 40.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<HopCreep> Worst(TimeSpan contact) =>
        Accepted.Between(0, 60, contact.TotalDays, "contact", "d") is { } refusal
            ? refusal
            : Of(End * (1 - Math.Exp(-PerDay * contact.TotalDays)));

    /// <summary>What a fall in real extract makes in a closed tank of beer, 1.00 kg/L.</summary>
    /// <param name="realFall">0 to 5 °P.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<HopCreep> From(DegreesPlato realFall) =>
        Accepted.Between(0, 5, realFall.Value, "real-extract", "°P") is { } refusal ? refusal : Of(realFall.Value);

    // g/L by Balling: 10 g for each °P and litre.
    private static HopCreep Of(double fall)
    {
        var made = Balling.YieldOf(Mass.FromGrams(10 * fall));
        return new HopCreep(
            new DegreesPlato(fall),
            CarbonDioxideContent.Found(made.CarbonDioxide.Grams),
            VolumeConcentration.FromPercent(made.Ethanol.Grams / 789.24 * 100)
        );
    }
}
