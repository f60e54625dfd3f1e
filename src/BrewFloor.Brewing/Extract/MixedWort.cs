using UnitsNet;

namespace BrewFloor.Brewing.Extract;

/// <summary>Something that went into a batch: wort, sugar, fruit, water.</summary>
/// <param name="Mass">In kg.</param>
/// <param name="Extract">What of it dissolves and counts as extract: 100 % for sugar, 0 % for water.</param>
public readonly record struct ExtractAddition(Mass Mass, MassFraction Extract);

/// <summary>A batch that was filled several times, or given sugar, fruit or water on the way.</summary>
/// <param name="Mass">Of everything, kg, as if no gas had left.</param>
/// <param name="Original">All extract over all mass, °P: the only original extract that Balling's balance holds for.</param>
/// <remarks>
/// Source: conservation of mass. A single original gravity fails as soon as something is added (Nielsen et al. 2007, for
/// dilution after high gravity brewing).
/// </remarks>
public readonly record struct MixedWort(Mass Mass, DegreesPlato Original)
{
    /// <summary>Everything put together.</summary>
    /// <param name="additions">In any order; each 0 to 10,000,000 kg, 0 to 100 % extract.</param>
    /// <returns>Refused with the row outside, and where all of it weighs less than 0.001 kg.</returns>
    public static Outcome<MixedWort> Of(IEnumerable<ExtractAddition> additions)
    {
        var (mass, extract, row) = (0.0, 0.0, 0);
        foreach (var addition in additions)
        {
            row++;
            if (RefusalOf(addition) is { } refusal)
            {
                return refusal with { Row = row };
            }

            mass += addition.Mass.Kilograms;
            extract += addition.Mass.Kilograms * addition.Extract.Percent;
        }

        return Accepted.Between(0.001, double.MaxValue, mass, "mass", "kg") is { } nothing
            ? nothing with
            {
                To = "",
            }
            : new MixedWort(Mass.FromKilograms(mass), new DegreesPlato(extract / mass));
    }

    private static Refusal? RefusalOf(ExtractAddition addition) =>
        Accepted.Kilograms(addition.Mass, "mass") ?? Accepted.Between(0, 100, addition.Extract.Percent, "extract", "%");
}
