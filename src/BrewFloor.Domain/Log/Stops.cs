using System.Collections.Frozen;

namespace BrewFloor.Domain.Log;

/// <summary>The stops a brewer may allow beforehand. A stop! is not among them, nor is a caution: a reason does for that.</summary>
/// <remarks><c>StopsTests</c> compares them with what the guards say.</remarks>
public static class Stops
{
    public static readonly FrozenSet<string> CanBeAllowed = FrozenSet.Create(
        StringComparer.Ordinal,
        "heating-empty",
        "hop-creep-sealed",
        "not-sanitized",
        "would-freeze"
    );
}
