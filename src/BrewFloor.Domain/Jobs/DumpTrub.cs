using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Jobs;

/// <summary>Cold break and hops out of the cone within the first day or two, unless it ferments hard by then.</summary>
/// <remarks>Common practice, no source.</remarks>
public static class DumpTrub
{
    public const string Rule = "dump-trub";

    /// <summary>One for each tank that wort ran into. Of beer that was taken over nobody knows.</summary>
    public static IEnumerable<Job> For(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now) =>
        state.IsTakenOver
            ? []
            : state
                .InTanks.Where(beer => beer.IsWort && !IsDumped(state, beer.TankId))
                .Select(beer => For(beer, batch, state, rules, now));

    /// <summary>Any trub let out since the wort came.</summary>
    internal static bool IsDumped(BatchState state, Guid tankId) =>
        state.Dumps.Any(dump => dump.TankId == tankId && dump.What is Sediment.Trub);

    private static Job For(InTank beer, Batch batch, BatchState state, HouseRules rules, DateTimeOffset now)
    {
        var filled = beer.Since.At;
        var wait = batch.Kind is BeerKind.Lager ? rules.DumpTrubLager : rules.DumpTrubAle;
        var hardUntil = state.HardUntil(rules, now);
        var waited = hardUntil ?? state.HardEnded(rules, now);

        // What had to wait is due when the waiting ends, and has as long from there as it had at first.
        var due = waited > filled + wait ? waited.Value : filled + wait;
        var overdue = due + (rules.DumpTrubOverdue - wait);
        var harvest = HarvestYeast.BeginsAt(batch, state, rules)?.At;
        var isForHarvest = harvest <= overdue;
        return new(
            Rule,
            state.Subject,
            beer.Since.Entry,
            isForHarvest && harvest < due ? harvest.Value : due,
            isForHarvest ? harvest!.Value : overdue,
            [
                hardUntil is not null ? new("variant", "waits")
                : isForHarvest ? new("variant", "harvest")
                : new("since", filled),
                new("filled", filled),
            ]
        )
        {
            TankId = beer.TankId,
            ChangesAt = state.HardChanges(now),
        };
    }
}
