using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>Water that carries a cleaner out. Rinse by volume, not by time, and check the last of it.</summary>
/// <remarks>
/// Mass balance. Running through a full volume: c = c0 exp(-V / Vheld), the law of a sweep purge (Crowl, Louvar) with water,
/// if it mixes perfectly. In portions: c = c0 (left / (left + portion))^n. What hangs in dead legs obeys neither.
/// </remarks>
public static class Rinse
{
    /// <summary>Water that runs through what stays full, L.</summary>
    /// <param name="held">What stays in tank and lines while it runs, 0.01 to 100,000 L.</param>
    /// <param name="before">Concentration before, above 0 to 2,000 g/L.</param>
    /// <param name="after">Wanted at the end, above 0, at most the one before.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> Running(Volume held, MassConcentration before, MassConcentration after) =>
        RefusalOf(held, before, after) is { } refusal
            ? refusal
            : Volume.FromLiters(held.Liters * Math.Log(before.GramsPerLiter / after.GramsPerLiter));

    /// <summary>How many portions, each let out again.</summary>
    /// <param name="left">What clings and stays after each, 0.01 to 100,000 L.</param>
    /// <param name="portion">Water each time, 0.01 to 100,000 L.</param>
    /// <param name="before">Concentration before, above 0 to 2,000 g/L.</param>
    /// <param name="after">Wanted at the end, above 0, at most the one before.</param>
    /// <returns>Whole portions; refused outside.</returns>
    public static Outcome<int> Portions(
        Volume left,
        Volume portion,
        MassConcentration before,
        MassConcentration after
    ) =>
        (RefusalOf(left, before, after) ?? Accepted.Between(0.01, 100_000, portion.Liters, "portion", "L"))
            is { } refusal
            ? refusal
            : (int)
                Math.Ceiling(
                    (
                        Math.Log(before.GramsPerLiter / after.GramsPerLiter)
                        / Math.Log((left.Liters + portion.Liters) / left.Liters)
                    ) - 1e-9
                );

    private static Refusal? RefusalOf(Volume held, MassConcentration before, MassConcentration after) =>
        Accepted.Between(0.01, 100_000, held.Liters, "held", "L")
        ?? Accepted.Between(1e-6, 2000, before.GramsPerLiter, "before", "g/L")
        ?? Accepted.Between(1e-6, before.GramsPerLiter, after.GramsPerLiter, "after", "g/L");
}
