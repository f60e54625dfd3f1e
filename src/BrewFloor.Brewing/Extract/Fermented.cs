using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>What a mass of wort has become: nothing is lost, it only leaves as gas or settles as yeast.</summary>
/// <param name="Wort">In kg.</param>
/// <param name="Beer">In kg: what is left when the gas has gone and the new yeast is taken out.</param>
/// <param name="Extract">Real extract that fermented, kg.</param>
/// <param name="Formed">CO2, alcohol and dry yeast.</param>
/// <remarks>
/// Source: <see cref="Balling"/>; beer = wort / (1 + 0.010665 A). One original extract only, as there. Checks HE-02, CI-07.
/// </remarks>
public readonly record struct Fermented(Mass Wort, Mass Beer, Mass Extract, FermentationYield Formed)
{
    /// <summary>From wort to a real extract.</summary>
    /// <param name="wort">In kg, 0 to 10,000,000.</param>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="real">0 °P to the original extract.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Fermented> From(Mass wort, DegreesPlato original, DegreesPlato real)
    {
        var alcohol = Balling.Alcohol(original, real);
        if ((Accepted.Kilograms(wort, "wort") ?? alcohol.Refusal) is { } refusal)
        {
            return refusal;
        }

        var beer = Balling.BeerFrom(wort, alcohol.Value);
        var gone = Math.Max(0, (wort.Kilograms * original.Value) - (beer.Kilograms * real.Value)) / 100;
        var extract = Mass.FromKilograms(gone);
        return new Fermented(wort, beer, extract, Balling.YieldOf(extract));
    }

    /// <summary>From litres of wort, which weigh what their extract says.</summary>
    /// <param name="wort">In L at 20 °C.</param>
    /// <param name="original">1 to 40 °P.</param>
    /// <param name="real">0 °P to the original extract.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Fermented> From(Volume wort, DegreesPlato original, DegreesPlato real)
    {
        var gravity = original.ToGravity();
        if (!gravity.Gives(out var known))
        {
            return gravity.Refusal!;
        }

        var mass = Brewing.Extract.Wort.MassOf(wort, known);
        return mass.Gives(out var kilograms) ? From(kilograms, original, real) : mass.Refusal!;
    }
}
