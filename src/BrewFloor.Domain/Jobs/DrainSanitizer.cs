using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>A sanitizer that stands in a tank goes out: an acid one after 12 hours, another after 24 (common practice, no source).</summary>
public static class DrainSanitizer
{
    public const string Rule = "drain-sanitizer";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now)
    {
        if (state.Contents is not { What: Holding.Sanitizer, Since: var since, Agent: var agent })
        {
            yield break;
        }

        var due = since.At + (agent?.IsAcid() is true ? rules.DrainAcidSanitizer : rules.DrainOtherSanitizer);
        yield return new(Rule, state.Subject, since.Entry, due, due + rules.DrainOverdue, [new("since", since.At)]);
    }
}
