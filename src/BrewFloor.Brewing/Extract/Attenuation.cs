using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>How far a beer has come, from its original and its present gravity.</summary>
/// <param name="Original">Original extract, °P.</param>
/// <param name="Apparent">Apparent extract now, °P.</param>
/// <param name="Real">Real extract now, °P.</param>
/// <param name="AlcoholByWeight">In % w/w.</param>
/// <param name="AlcoholByVolume">In % v/v at 20 °C: show one decimal, it is no legal measurement.</param>
/// <param name="PlusMinus">One standard error of the alcohol by volume: 2 % of it, 0.1 % v/v at 5 %.</param>
/// <param name="ApparentDegree">Apparent degree of fermentation, %.</param>
/// <param name="RealDegree">Real degree of fermentation, %.</param>
/// <remarks>
/// Source: <see cref="Balling"/> with an <see cref="AttenuationQuotient"/>; against the means of real brews within 2.5 %
/// (checks EX-24, EX-25). Checks EX-12, EX-13.
/// </remarks>
public readonly record struct Attenuation(
    DegreesPlato Original,
    DegreesPlato Apparent,
    DegreesPlato Real,
    MassFraction AlcoholByWeight,
    VolumeConcentration AlcoholByVolume,
    VolumeConcentration PlusMinus,
    Ratio ApparentDegree,
    Ratio RealDegree
)
{
    private const double RelativeError = 0.02;

    /// <summary>From two gravities at 20 °C.</summary>
    /// <param name="original">Of the wort, 1.0039 to 1.1788 (1 to 40 °P).</param>
    /// <param name="present">Of the beer, 0.995 to the original gravity.</param>
    /// <param name="quotient">0.81 unless chosen.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Attenuation> From(
        SpecificGravity original,
        SpecificGravity present,
        AttenuationQuotient quotient = default
    )
    {
        var (before, now) = (DegreesPlato.From(original), DegreesPlato.From(present));
        return (before.Refusal ?? now.Refusal) is { } refusal ? refusal : From(before.Value, now.Value, quotient);
    }

    /// <summary>From two extracts.</summary>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="apparent">-1.3 °P to the original extract.</param>
    /// <param name="quotient">0.81 unless chosen.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Attenuation> From(
        DegreesPlato original,
        DegreesPlato apparent,
        AttenuationQuotient quotient = default
    )
    {
        var (found, gravity) = (Balling.RealExtract(original, apparent, quotient), apparent.ToGravity());
        if ((found.Refusal ?? gravity.Refusal) is { } refusal)
        {
            return refusal;
        }

        var real = found.Value;
        var weighed = Balling.Alcohol(original, real);
        if (!weighed.Gives(out var alcohol))
        {
            return weighed.Refusal!;
        }

        var byVolume = Balling.AlcoholByVolume(alcohol, gravity.Value);
        return byVolume.Gives(out var abv)
            ? new Attenuation(
                original,
                apparent,
                real,
                alcohol,
                abv,
                abv * RelativeError,
                Balling.ApparentDegree(original, apparent).Value,
                Balling.RealDegree(original, real).Value
            )
            : byVolume.Refusal!;
    }
}
