using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Jobs;

/// <summary>Yeast out of the cone when it has done its work: after the end, and again a day after the crash.</summary>
/// <remarks>
/// Common practice, no source: compacted it takes less beer along, and old yeast on a warm cone spoils it. Textbooks say only
/// that it should not lie.
/// </remarks>
public static class DumpYeast
{
    public const string Rule = "dump-yeast";

    private const double Warm = 13; // °C; above it
    private const double Cold = 4; // °C; at it and below

    /// <summary>One for each tank that was not racked into; none while a harvest is planned and not taken.</summary>
    public static IEnumerable<Job> For(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now) =>
        (batch.HarvestPlanned && state.Harvests is []) || (state.Pitches is [] && !state.IsTakenOver)
            ? []
            : from beer in state.InTanks
            where beer.IsWort
            let job = For(beer, batch, state, rules)
            where job is not null
            select job;

    private static Job? For(InTank beer, Batch batch, BatchState state, HouseRules rules)
    {
        (string Variant, Moment Since, DateTimeOffset DueAt)[] ends =
        [
            .. state.FinishedAt(beer.TankId, batch, rules) is { } end
                ? [("finished", end, end.At)]
                : Array.Empty<(string, Moment, DateTimeOffset)>(),
            .. beer.Cold is { } cold
                ? [("cold", cold, cold.At + rules.DumpYeastAfterCrash)]
                : Array.Empty<(string, Moment, DateTimeOffset)>(),
        ];
        var open = ends.Where(end => !IsDumped(state, beer.TankId, end.Since.At)).OrderBy(end => end.DueAt).ToArray();
        return open is [var first, ..]
            ? new Job(
                Rule,
                state.Subject,
                first.Since.Entry,
                first.DueAt,
                first.DueAt + Grace(state, rules),
                [new("variant", first.Variant), new("since", first.Since.At)]
            )
            {
                TankId = beer.TankId,
            }
            : null;
    }

    private static bool IsDumped(BatchState state, Guid tankId, DateTimeOffset since) =>
        state.Dumps.Any(dump => dump.TankId == tankId && dump.What is Sediment.Yeast && dump.Moment.At >= since);

    /// <summary>How long it may lie; beer nobody read counts as warm.</summary>
    private static TimeSpan Grace(BatchState state, HouseRules rules) =>
        state.LastTemperature?.Read.Temperature.DegreesCelsius switch
        {
            <= Cold => rules.DumpYeastCold,
            <= Warm => rules.DumpYeastCool,
            _ => rules.DumpYeastWarm,
        };
}
