using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>Mass per volume of ethanol in water at 20 °C.</summary>
/// <remarks>Source: EU Council Directive 76/766/EEC, Annex, which is OIML R22. Check EX-18.</remarks>
public static class EthanolDensity
{
    private static readonly double[] Coefficients =
    [
        Water,
        -192.9769495,
        389.1238958,
        -1668.103923,
        13522.15441,
        -88292.78388,
        306287.4042,
        -613838.1234,
        747017.2998,
        -547846.1354,
        223446.0334,
        -39032.85426,
    ];

    /// <summary>What the formula gives for water, kg/m³; gravities are taken against it, so that no alcohol gives 1.</summary>
    internal const double Water = 998.20123;

    /// <summary>In kg/m³: 998.201 for water, 789.24 for pure ethanol.</summary>
    /// <param name="alcohol">By weight, 0 to 100 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Density> At20(MassFraction alcohol) =>
        Accepted.Between(0, 100, alcohol.Percent, "alcohol-by-weight", "%") is { } refusal
            ? refusal
            : Density.FromKilogramsPerCubicMeter(Sum(alcohol.DecimalFractions));

    private static double Sum(double p)
    {
        var sum = 0.0;
        for (var i = Coefficients.Length - 1; i >= 0; i--)
        {
            sum = (sum * p) + Coefficients[i];
        }

        return sum;
    }
}
