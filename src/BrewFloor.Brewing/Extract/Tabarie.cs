using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>A beer's gravity from what is in it: that of its extract and that of its alcohol, added.</summary>
/// <remarks>
/// Source: Tabarié's principle, SG = SG(extract) + SG(alcohol) - 1, with the sucrose table and OIML R22. It gives the
/// attenuation quotient without any brewing constant: check EX-17.
/// </remarks>
public static class Tabarie
{
    /// <summary>The gravity a hydrometer would show at 20 °C.</summary>
    /// <param name="real">Real extract, 0 to 40 °P.</param>
    /// <param name="alcohol">By weight, 0 to 20 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<SpecificGravity> Gravity(DegreesPlato real, MassFraction alcohol)
    {
        var refusal =
            Accepted.Between(0, 40, real.Value, "real-extract", "°P")
            ?? Accepted.Between(0, 20, alcohol.Percent, "alcohol-by-weight", "%");
        if (refusal is not null)
        {
            return refusal;
        }

        var spirit = EthanolDensity.At20(alcohol).Value.KilogramsPerCubicMeter / EthanolDensity.Water;
        return SpecificGravity.Found(real.ToGravity().Value.Value + spirit - 1);
    }
}
