using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>Where the first ice forms in a beer.</summary>
/// <remarks>
/// -(0.42 A + 0.04 OE + 0.2) °C. Common practice, no primary source (a trade discussion attributes it to a university's
/// note; its example, check HE-12, only comes out with all three signs negative, though copies have them positive).
/// Physics gives 0.4 °C warmer for an ordinary beer: keep set points well above.
/// </remarks>
public static class BeerFreezing
{
    /// <summary>In °C.</summary>
    /// <param name="alcohol">By weight, 0 to 12 %.</param>
    /// <param name="original">Original extract, 0 to 30 °P.</param>
    /// <returns>Refused outside (ours: beyond any beer the rule was seen used for).</returns>
    public static Outcome<Temperature> PointOf(MassFraction alcohol, DegreesPlato original)
    {
        var refusal =
            Accepted.Between(0, 12, alcohol.Percent, "alcohol-by-weight", "%")
            ?? Accepted.Between(0, 30, original.Value, "original-extract", "°P");
        return refusal is null
            ? Temperature.FromDegreesCelsius(-((0.42 * alcohol.Percent) + (0.04 * original.Value) + 0.2))
            : refusal;
    }
}
