using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

/// <summary>What the gravities of a batch say: fermenting hard, stable, finished.</summary>
/// <remarks>
/// Beer of one batch in several tanks goes its own way in each: a tank is judged by its own readings and by those from
/// before the beer came to it, the batch by all of its tanks.
/// </remarks>
public static class Fermentation
{
    private static readonly SpecificGravity Anything = SpecificGravity.Of(1.2);

    internal static readonly TimeSpan HardBegins = TimeSpan.FromHours(12);

    internal static readonly TimeSpan HardEnds = TimeSpan.FromHours(96);

    /// <summary>
    /// Two readings at least 44 h apart that differ by at most 0.1 °P (0.001 if one is by hydrometer) and none lower
    /// between; the later is the latest.
    /// </summary>
    public static bool IsStable(this BatchState batch, HouseRules rules) =>
        Histories(batch).All(readings => readings.AreStable(rules));

    /// <inheritdoc cref="IsStable(BatchState, HouseRules)"/>
    public static bool IsStable(this BatchState batch, Guid tankId, HouseRules rules) =>
        batch.ReadingsOf(tankId).AreStable(rules);

    /// <summary>
    /// The reading by which it was known to be finished, since when no other said otherwise: stable, and not above the
    /// limit of attenuation by more than a reading is off. Null: not finished, or the limit is unknown.
    /// </summary>
    public static Moment? FinishedAt(this BatchState batch, Batch thing, HouseRules rules)
    {
        if (thing.LimitOfAttenuation is not { } limit)
        {
            return null;
        }

        return EndOf(batch, limit, rules);
    }

    /// <summary>The same of the beer in one tank.</summary>
    /// <inheritdoc cref="FinishedAt(BatchState, Batch, HouseRules)"/>
    public static Moment? FinishedAt(this BatchState batch, Guid tankId, Batch thing, HouseRules rules) =>
        thing.LimitOfAttenuation is { } limit ? FinishedAt(batch.ReadingsOf(tankId), limit, rules) : null;

    /// <summary>The reading by which it was known to be stable, at whatever gravity, since when no other said otherwise.</summary>
    public static Moment? StableAt(this BatchState batch, HouseRules rules) => EndOf(batch, Anything, rules);

    /// <summary>
    /// Fell more than 1 °P in the 24 h before its last reading, or nothing was read in the last 24 h and the first yeast
    /// went in 12 to 96 h ago. A stable beer doesn't.
    /// </summary>
    public static bool IsFermentingHard(this BatchState batch, HouseRules rules, DateTimeOffset now)
    {
        if (batch.Closed is not null || batch.Pitches is not [var pitch, ..] || batch.IsStable(rules))
        {
            return false;
        }

        var day = TimeSpan.FromHours(24);
        var isRead =
            batch.Gravities is [.., var last] && last.Moment.At > pitch.Moment.At && now - last.Moment.At <= day;
        var sincePitch = now - pitch.Moment.At;
        return isRead
            ? FallPerDay(batch, pitch.Moment.At) > rules.FermentingHardPlatoPerDay
            : sincePitch >= HardBegins && sincePitch <= HardEnds;
    }

    public static bool IsCold(this BatchState batch) => batch.Cold is not null;

    /// <summary>Whether the gravity is above a limit by more than a reading is off.</summary>
    internal static bool IsAbove(this GravityFact reading, SpecificGravity limit, HouseRules rules) =>
        reading.Gravity > limit && !IsSame(reading, reading with { Gravity = limit }, rules);

    /// <summary>The readings that tell of the beer in a tank, in time order.</summary>
    internal static GravityFact[] ReadingsOf(this BatchState batch, Guid tankId)
    {
        var came = batch.In(tankId)?.Since.At;
        return [.. batch.Gravities.Where(g => g.TankId == tankId || came is null || g.Moment.At <= came)];
    }

    internal static bool AreStable(this ReadOnlySpan<GravityFact> readings, HouseRules rules)
    {
        if (readings.IsEmpty)
        {
            return false;
        }

        // Backwards, so that the lowest between is known when an earlier one is far enough away.
        var last = readings[^1];
        var lowest = last.Gravity;
        for (var i = readings.Length - 2; i >= 0; i--)
        {
            var first = readings[i];
            var isFar = last.Moment.At - first.Moment.At >= rules.StableFor;
            var noneLower = lowest >= last.Gravity || lowest >= first.Gravity;
            if (isFar && noneLower && IsSame(first, last, rules))
            {
                return true;
            }

            lowest = first.Gravity < lowest ? first.Gravity : lowest;
        }

        return false;
    }

    private static Moment? EndOf(BatchState batch, SpecificGravity limit, HouseRules rules)
    {
        Moment?[] ends = [.. Histories(batch).Select(readings => FinishedAt(readings, limit, rules))];
        return ends.All(end => end is not null) ? ends.MaxBy(end => end!.Value.At) : null;
    }

    private static bool AreStable(this GravityFact[] readings, HouseRules rules) => AreStable(readings.AsSpan(), rules);

    private static IEnumerable<GravityFact[]> Histories(BatchState batch) =>
        batch.InTanks is []
            ?
            [
                [.. batch.Gravities],
            ]
            : batch.InTanks.Select(beer => batch.ReadingsOf(beer.TankId));

    private static Moment? FinishedAt(GravityFact[] readings, SpecificGravity limit, HouseRules rules)
    {
        Moment? since = null;
        for (var count = 1; count <= readings.Length; count++)
        {
            var last = readings[count - 1];
            var isFinished = !last.IsAbove(limit, rules) && AreStable(readings.AsSpan(0, count), rules);
            since = isFinished ? since ?? last.Moment : null;
        }

        return since;
    }

    // A hydrometer is read to 0.001 at best; a hair more for what binary numbers make of 0.1.
    internal static bool IsSame(GravityFact one, GravityFact other, HouseRules rules) =>
        one.Instrument is Instrument.Hydrometer || other.Instrument is Instrument.Hydrometer
            ? Math.Abs(one.Gravity.Value - other.Gravity.Value) <= rules.StableHydrometer + 1e-9
            : Math.Abs(Strength.Plato(one.Gravity) - Strength.Plato(other.Gravity)) <= rules.StablePlato + 1e-9;

    // The steepest of the last 24 h; when nothing was read in them, the mean since the reading before, or since the pitch.
    private static double FallPerDay(BatchState batch, DateTimeOffset pitchedAt)
    {
        var last = batch.Gravities[^1];
        (DateTimeOffset At, SpecificGravity Gravity)[] earlier =
        [
            .. batch.OriginalGravity is { } original
                ? [(pitchedAt, original)]
                : Array.Empty<(DateTimeOffset, SpecificGravity)>(),
            .. batch
                .ReadingsOf(last.TankId)
                .Where(g => g.Moment.At > pitchedAt && g.Moment.At < last.Moment.At)
                .Select(g => (g.Moment.At, g.Gravity)),
        ];
        var near = earlier.Where(e => last.Moment.At - e.At <= TimeSpan.FromHours(24)).ToArray();
        return near is not [] ? near.Max(e => Strength.Plato(e.Gravity) - Strength.Plato(last.Gravity))
            : earlier is [.., var before]
                ? (Strength.Plato(before.Gravity) - Strength.Plato(last.Gravity))
                    / (last.Moment.At - before.At).TotalDays
            : 0;
    }
}
