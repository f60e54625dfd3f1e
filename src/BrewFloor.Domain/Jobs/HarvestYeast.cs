using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Jobs;

/// <summary>Yeast is wanted from this batch, and it is at its best right after the end.</summary>
public static class HarvestYeast
{
    public const string Rule = "harvest-yeast";

    public static IEnumerable<Job> For(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now)
    {
        if (BeginsAt(batch, state, rules) is { } finished)
        {
            yield return new(
                Rule,
                state.Subject,
                finished.Entry,
                finished.At,
                finished.At + rules.HarvestWindow,
                [
                    new("variant", state.FinishedAt(batch, rules) is null ? "still" : "finished"),
                    new("finished", finished.At),
                    new("window", rules.HarvestWindow),
                ]
            )
            {
                TankId = state.InTanks[0].TankId,
            };
        }
    }

    /// <summary>
    /// The end of fermentation, when a harvest is planned, not taken, and there is beer to take it from. Where no limit is known
    /// the gravity standing still is the end; beer that was crashed ferments no further, whatever it stands at.
    /// </summary>
    internal static Moment? BeginsAt(Batch batch, BatchState state, HouseRules rules) =>
        batch.HarvestPlanned && state.Harvests is [] && state.InTanks is not []
            ? StandsStillAt(batch, state, rules)
            : null;

    /// <summary>When it was known to ferment no further; null before, and for wort that no yeast has been in.</summary>
    internal static Moment? StandsStillAt(Batch batch, BatchState state, HouseRules rules) =>
        state.Pitches is [] && !state.IsTakenOver ? null
        : state.FinishedAt(batch, rules) is { } finished ? finished
        : batch.LimitOfAttenuation is null && HasBegun(state, rules) && state.StableAt(rules) is { } stable ? stable
        : state.Cold;

    // Two equal readings before it begins are no end.
    private static bool HasBegun(BatchState state, HouseRules rules) => state.IsTakenOver || state.HasFallen(rules);
}
