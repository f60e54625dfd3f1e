using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>
/// The beer is to make its own gas, and what is left to ferment is just enough for it: the way out is closed, and the valve
/// set. Only in a vessel that may bear the pressure.
/// </summary>
/// <remarks>
/// By the batch's own forecast, so it moves with every reading; where hops or a second tank broke that, by the readings alone. A
/// tank that was shut since the yeast went in needs nothing: its valve holds the pressure.
/// </remarks>
public static class CloseValve
{
    public const string Rule = "close-valve";

    /// <summary>For the beer in one tank.</summary>
    public static IEnumerable<Job> For(
        Batch batch,
        BatchState state,
        InTank beer,
        Tank tank,
        HouseRules rules,
        DateTimeOffset now
    )
    {
        if (
            batch.CarbonDioxideWanted is null
            || beer.ShutIn is not null
            || state.Pitches is not [var pitch, ..]
            || !ValvePlan.For(state, batch, beer, tank, rules, now).Gives(out var plan)
        )
        {
            yield break;
        }

        var last = state.ReadingsOf(tank.Id).LastOrDefault(read => read.Moment.At >= pitch.Moment.At);
        if (DueAt(plan, last, rules) is not { } due)
        {
            yield break;
        }

        yield return new(
            Rule,
            state.Subject,
            (beer.Since.At > pitch.Moment.At ? beer.Since : pitch.Moment).Entry,
            due,
            due + rules.CloseValveOverdue,
            Because(plan, last)
        )
        {
            TankId = tank.Id,
        };
    }

    private static Listed<Number> Because(ValvePlan plan, GravityFact last) =>
        [
            new(
                "variant",
                last == default ? "unread"
                    : plan.Forecast is null ? "by-readings"
                    : "read"
            ),
            new("wanted", plan.Wanted),
            new("close", plan.CloseAt),
            new("pressure", plan.Gauge),
            .. last == default ? [] : new Number[] { new("gravity", last.Gravity), new("since", last.Moment.At) },
        ];

    // From the reading that was low enough; else when the forecast expects it, never before what was read last; without one,
    // when the next reading is due.
    private static DateTimeOffset? DueAt(ValvePlan plan, GravityFact last, HouseRules rules)
    {
        if (last != default && last.Gravity <= plan.CloseAt)
        {
            return last.Moment.At;
        }

        if (plan.Forecast is not { } forecast)
        {
            return last == default ? null : last.Moment.At + rules.GravityEvery;
        }

        var extract = new DegreesPlato(Strength.Plato(plan.CloseAt));
        return forecast.At(forecast.Outlook.TimeTo(extract).Value.Likely) is not { } expected ? null
            : last != default && last.Moment.At > expected ? last.Moment.At
            : expected;
    }
}
