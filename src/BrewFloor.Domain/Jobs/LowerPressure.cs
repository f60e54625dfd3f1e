using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>The gauge was read above what the vessel may stand under: overdue at once, until it reads no more than that.</summary>
public static class LowerPressure
{
    public const string Rule = "lower-pressure";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now)
    {
        var limit = PressureGuards.LowestLimit(tank);
        if (state.AboveSince(limit ?? Pressures.None) is not { } since || state.Pressure is not { } last)
        {
            yield break;
        }

        yield return new(
            Rule,
            state.Subject,
            since.Entry,
            since.At,
            since.At,
            limit is { } known
                ? [new("pressure", last.Value), new("limit", known), new("since", since.At)]
                : [new("variant", "unrated"), new("pressure", last.Value), new("since", since.At)]
        );
    }
}
