using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Jobs;

/// <summary>Something was done over a stop: it stays open until a brewer says what came of it.</summary>
public static class AnswerForIt
{
    public const string Rule = "answer-for-it";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now) =>
        For(state, rules, tank.Id);

    public static IEnumerable<Job> For(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now) =>
        For(state, rules, state.InTanks is [var only] ? only.TankId : null);

    public static IEnumerable<Job> For(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now) =>
        For(state, rules, tankId: null);

    private static IEnumerable<Job> For(State state, HouseRules rules, Guid? tankId) =>
        state.Unanswered.Select(done => new Job(
            Rule,
            state.Subject,
            done.Moment.Entry,
            done.Moment.At,
            done.Moment.At + rules.AnswerWithin,
            [new("done", done.Moment.At), new("codes", string.Join(' ', done.Codes))]
        )
        {
            TankId = tankId,
        });
}
