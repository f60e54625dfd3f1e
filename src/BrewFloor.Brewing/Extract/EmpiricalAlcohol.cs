using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>Alcohol by weight as 532 real brews had it, without Balling's balance.</summary>
/// <remarks>
/// A = (0.372 + 0.00357 OE)(OE - AE); the factor's standard error is 0.010, so 2.4 % of the answer. Source: Cutaia, Reid,
/// Speers 2009, J. Inst. Brew. 115:318, Table VI (coefficients; that the symbol means A / (OE - AE) is our reading, which
/// agrees with their Table III). Check EX-14.
/// </remarks>
public static class EmpiricalAlcohol
{
    /// <summary>In % w/w.</summary>
    /// <param name="original">1 to 40 °P; the brews behind it had 11 to 15 on average.</param>
    /// <param name="apparent">-1.31 °P to the original extract.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<MassFraction> From(DegreesPlato original, DegreesPlato apparent) =>
        Balling.RefusalOf(original, apparent) is { } refusal
            ? refusal
            : MassFraction.FromPercent((0.372 + (0.00357 * original.Value)) * (original.Value - apparent.Value));
}
