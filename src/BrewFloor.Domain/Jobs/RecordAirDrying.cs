using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>A bath counts only from the air-drying: 12 hours after it somebody looks (common practice, no source).</summary>
public static class RecordAirDrying
{
    public const string Rule = "record-air-drying";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now)
    {
        if (state.Bath is { Moment: var given })
        {
            var due = given.At + rules.DrainAcidSanitizer; // every bath is an acid
            yield return new(Rule, state.Subject, given.Entry, due, due + rules.DrainOverdue, [new("bath", given.At)]);
        }
    }
}
