using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>A relief valve is tested by the calendar (common practice; local codes may want it sooner), and at once after it failed.</summary>
public static class TestReliefValve
{
    public const string Rule = "test-relief-valve";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now)
    {
        if (tank.Relief is not { } relief || (state.ReliefTested ?? state.Begun) is not { } cause)
        {
            yield break;
        }

        if (PressureGuards.HasReliefFailed(tank, state, rules))
        {
            yield return new(
                Rule,
                state.Subject,
                cause.Entry,
                cause.At,
                cause.At,
                [new("variant", "failed"), new("tested", rules.DateOf(cause.At))]
            );
            yield break;
        }

        var due = PressureGuards.ReliefTestDueOn(tank, state, rules)!.Value;
        yield return new(
            Rule,
            state.Subject,
            cause.Entry,
            rules.StartOf(due),
            rules.StartOf(due.AddDays(1)), // from then on no pressure is raised
            [new("due", due), new("setting", relief.Setting), new("months", rules.ReliefTestMonths)]
        );
    }
}
