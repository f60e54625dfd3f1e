using BrewFloor.Brewing.Yeast;
using BrewFloor.Domain.House;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>How much of a stored slurry or starter may still live: from its last count, or from all of it when it was made.</summary>
/// <remarks>
/// A guess that says when to count, never one instead of counting; see <see cref="StorageViability"/>. Packs are dried or
/// sealed, and their maker's date says more: they have no estimate.
/// </remarks>
public static class Viability
{
    /// <summary>As far as the model goes.</summary>
    private static readonly TimeSpan Furthest = TimeSpan.FromDays(30);

    private static readonly Ratio AllOfIt = Ratio.FromPercent(100);

    /// <summary>Slurry and starters die in the jar; a pack keeps to its date.</summary>
    public static bool IsLoose(this Culture culture) => culture.Kind is CultureKind.Slurry or CultureKind.Starter;

    /// <summary>The range it is likely in at <paramref name="now"/>; null for a pack, and outside the model's days and degrees.</summary>
    public static ViabilityRange? Now(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now) =>
        culture.IsLoose() && Start(state) is { } start ? After(start, state, rules, now - start.At) : null;

    /// <summary>When the likeliest value falls below a share (0 to 1); null when it doesn't within the model's days.</summary>
    public static DateTimeOffset? FallsBelow(double share, Culture culture, CultureState state, HouseRules rules)
    {
        if (!culture.IsLoose() || Start(state) is not { } start)
        {
            return null;
        }

        if (start.Living.DecimalFractions < share)
        {
            return start.At;
        }

        if (!IsBelow(Furthest))
        {
            return null;
        }

        var (above, below) = (TimeSpan.Zero, Furthest);
        while (below - above > TimeSpan.FromMinutes(1))
        {
            var middle = (above + below) / 2;
            (above, below) = IsBelow(middle) ? (above, middle) : (middle, below);
        }

        return start.At + below;

        bool IsBelow(TimeSpan age) => After(start, state, rules, age)?.Likely.DecimalFractions < share;
    }

    private static (DateTimeOffset At, Ratio Living)? Start(CultureState state) =>
        state.Counts is [.., var last] ? (last.Moment.At, Ratio.FromPercent(last.Viability * 100))
        : state.Made is { } made ? (made.At, AllOfIt)
        : null;

    // Kept nobody knows how cold: as warm as the house would let it be.
    private static ViabilityRange? After(
        (DateTimeOffset At, Ratio Living) start,
        CultureState state,
        HouseRules rules,
        TimeSpan age
    ) =>
        StorageViability.After(start.Living, age, state.StoredAt ?? rules.CultureKeptBelow).Gives(out var range)
            ? range
            : null;
}
