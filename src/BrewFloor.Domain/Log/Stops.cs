using System.Collections.Frozen;

namespace BrewFloor.Domain.Log;

/// <summary>The stops a brewer may allow beforehand. A stop! is not among them, nor is a caution: a reason does for that.</summary>
/// <remarks><c>StopsTests</c> compares them with what the guards say.</remarks>
public static class Stops
{
    public static readonly FrozenSet<string> CanBeAllowed = FrozenSet.Create(
        StringComparer.Ordinal,
        "chlorine-on-steel",
        "exposed-allergen",
        "exposed-allergen-unnamed",
        "exposed-mixed-culture",
        "film-hurt",
        "foams-through-spray-ball",
        "heating-empty",
        "holds-beer",
        "hop-creep-sealed",
        "leaks",
        "never-passivated",
        "no-sanitizer",
        "not-clean",
        "not-leak-tested",
        "not-sanitized",
        "not-washed",
        "opened-since-sanitized",
        "out-of-service",
        "parts-off",
        "sanitizer-in",
        "sanitizing-lapsed",
        "would-freeze"
    );

    /// <summary>What a brewer can allow of a verdict; empty where something else stands in the way as well.</summary>
    public static Listed<string> Allowable(Verdict verdict) =>
        verdict.Standing.Any(o => o.Level is Level.Impossible or Level.HardStop)
            ? []
            :
            [
                .. verdict
                    .Standing.Where(o => o.Level is Level.Stop && CanBeAllowed.Contains(o.Code))
                    .Select(o => o.Code)
                    .Distinct(StringComparer.Ordinal),
            ];
}
