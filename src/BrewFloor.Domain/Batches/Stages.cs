using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Batches;

/// <summary>Where a batch is on its way.</summary>
public enum Stage
{
    Planned,
    Filled, // wort in a tank, nothing known to ferment
    Fermenting,
    Finished,
    Cold,
    Packaged, // out of the last tank; also when it was served from it
    Discarded,
}

/// <summary>The stage of a batch and how far it has come, worked out from what happened to it.</summary>
public static class Stages
{
    public static Stage StageOf(this BatchState batch, Batch thing, HouseRules rules) =>
        batch switch
        {
            { Closed: not null, Packaged: null, Discarded: not null } => Stage.Discarded,
            { Closed: not null } => Stage.Packaged,
            { Filled: null } => Stage.Planned,
            { Cold: not null } => Stage.Cold,
            _ when batch.FinishedAt(thing, rules) is not null => Stage.Finished,
            { Pitches: not [] } => Stage.Fermenting,
            _ when batch.HasFallen(rules) => Stage.Fermenting,
            _ => Stage.Filled,
        };

    /// <summary>The share of the fall from the original gravity to the limit of attenuation, in °P; 0 to 1.</summary>
    /// <returns><see langword="null"/> when one of them, or the gravity now, isn't known.</returns>
    public static double? HowFar(this BatchState batch, Batch thing)
    {
        if (
            batch is not { OriginalGravity: { } original, Gravities: [.., var last] }
            || thing.LimitOfAttenuation is not { } limit
            || limit >= original
        )
        {
            return null;
        }

        var start = Strength.Plato(original);
        return Math.Clamp((start - Strength.Plato(last.Gravity)) / (start - Strength.Plato(limit)), 0, 1);
    }

    /// <summary>Lower than its wort by more than two readings differ: it has begun to ferment.</summary>
    internal static bool HasFallen(this BatchState batch, HouseRules rules) =>
        batch is { OriginalGravity: { } original, Gravities: [.., var last] }
        && Strength.Plato(original) - Strength.Plato(last.Gravity) > rules.StablePlato;
}
