using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;

namespace BrewFloor.Domain.Batches;

/// <summary>What is in the glass, worked out from the gravities.</summary>
public static class Strength
{
    /// <summary>Extract, alcohol and degrees of fermentation by the original and the latest gravity.</summary>
    /// <returns><see langword="null"/> when one of them isn't known; refused outside the formulas' ranges.</returns>
    public static Outcome<Attenuation>? Of(BatchState batch) =>
        batch is { OriginalGravity: { } original, Gravities: [.., var latest] }
            ? Attenuation.From(original, latest.Gravity)
            : default(Outcome<Attenuation>?);

    /// <summary>Apparent extract in °P; what lies outside the sucrose tables is read at their end.</summary>
    public static double Plato(SpecificGravity gravity) =>
        DegreesPlato.From(SpecificGravity.Of(Math.Clamp(gravity.Value, 0.995, 1.179))).Value.Value;

    /// <summary>The gravity that reads so; what lies outside the sucrose tables is read at their end.</summary>
    public static SpecificGravity GravityOf(DegreesPlato extract) =>
        new DegreesPlato(Math.Clamp(extract.Value, -1.3, 40)).ToGravity().Value;
}
