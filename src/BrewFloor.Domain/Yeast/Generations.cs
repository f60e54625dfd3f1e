using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Yeast;

/// <summary>How often a line of yeast is used again: 8 generations, 5 out of strong wort, or the strain's own number.</summary>
/// <remarks>
/// Stewart 2015: the usable cycles fell from above 20 to 8 as wort went from 12 to 18 °P; Jenkins et al. 2003: 5 to 10 by
/// strain. The house's numbers are on the careful side.
/// </remarks>
public static class Generations
{
    private const double StrongPlato = 16;

    /// <summary>The last generation that is pitched.</summary>
    /// <param name="own">The strain's own limit, if it has one.</param>
    /// <param name="original">The original gravity of the beer the yeast comes from, if known.</param>
    public static int Limit(int? own, SpecificGravity? original, HouseRules rules) =>
        own ?? (IsStrong(original) ? rules.GenerationLimitStrong : rules.GenerationLimit);

    private static bool IsStrong(SpecificGravity? original) =>
        original is { } gravity && DegreesPlato.From(gravity).Gives(out var extract) && extract.Value > StrongPlato;
}
