using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Jobs;

/// <summary>A gravity a day while it falls, two 48 h apart to call it finished, none after.</summary>
/// <remarks>Common practice, no source; that a level gravity alone proves nothing is in <c>docs/science</c>.</remarks>
public static class TakeGravity
{
    public const string Rule = "gravity";

    /// <summary>Longer than the house asks two level readings to be apart, so that the second settles it.</summary>
    private static readonly TimeSpan Apart = TimeSpan.FromHours(48);

    /// <summary>One for each tank: beer of one batch goes its own way in each.</summary>
    public static IEnumerable<Job> For(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now) =>
        from beer in state.InTanks
        let next = Next(beer, batch, state, rules)
        where next is not null
        select new Job(
            Rule,
            state.Subject,
            next.Value.Since.Entry,
            next.Value.DueAt,
            next.Value.DueAt + rules.GravityOverdue,
            [new("variant", next.Value.Variant), new("since", next.Value.Since.At), new("gravity", next.Value.Gravity)]
        )
        {
            TankId = beer.TankId,
        };

    private static (string Variant, Moment Since, DateTimeOffset DueAt, object? Gravity)? Next(
        InTank beer,
        Batch batch,
        BatchState state,
        HouseRules rules
    )
    {
        if (First(beer, state) is not { } first)
        {
            return null; // wort without yeast
        }

        GravityFact[] readings = [.. state.ReadingsOf(beer.TankId).Where(g => IsOfTheBeer(g, state))];
        if (readings is not [.., var last])
        {
            return ("first", first, first.At + rules.GravityEvery, null);
        }

        // The cause is of this tank, so that two tanks make two jobs.
        var read = beer.Since.At > last.Moment.At ? beer.Since : last.Moment;
        var daily = read.At + rules.GravityEvery;
        if (state.DryHoppedWithYeastSince(rules) is { } hopped)
        {
            return hopped.At > read.At
                ? ("hopped", hopped, hopped.At + rules.GravityEvery, last.Gravity)
                : ("falling", read, daily, last.Gravity);
        }

        if (state.IsStable(beer.TankId, rules))
        {
            var isStuck = batch.LimitOfAttenuation is { } limit && last.IsAbove(limit, rules);
            return isStuck ? ("stuck", read, daily, last.Gravity) : null;
        }

        var level = LevelSince(readings, rules);
        return level == last.Moment
            ? ("falling", read, daily, last.Gravity)
            : ("level", read, Later(daily, level.At + Apart), last.Gravity);
    }

    /// <summary>The yeast went in, or the beer was taken over with yeast that nobody knows.</summary>
    private static Moment? First(InTank beer, BatchState state) =>
        state.Pitches is [var pitch, ..]
            ? (beer.Since.At > pitch.Moment.At ? beer.Since : pitch.Moment)
            : (state.IsTakenOver ? beer.Since : null);

    /// <summary>Not of the wort before the yeast.</summary>
    private static bool IsOfTheBeer(GravityFact reading, BatchState state) =>
        state.Pitches is not [var pitch, ..] || reading.Moment.At > pitch.Moment.At;

    /// <summary>The first of the readings at the end that all say the same.</summary>
    private static Moment LevelSince(GravityFact[] readings, HouseRules rules)
    {
        var last = readings[^1];
        return readings.Reverse().TakeWhile(reading => Fermentation.IsSame(reading, last, rules)).Last().Moment;
    }

    private static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;
}
