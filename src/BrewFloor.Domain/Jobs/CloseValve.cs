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
/// By the batch's own forecast, so it moves with every reading. A tank that was shut since the yeast went in needs nothing:
/// its valve holds the pressure.
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
            || !state.ForecastOf(batch, [], rules, now).Gives(out var forecast)
            || !ValvePlan.For(state, batch, beer, tank, forecast.Outlook.Final.Likely, rules).Gives(out var plan)
            || DueAt(forecast, plan) is not { } due
        )
        {
            yield break;
        }

        var cause = beer.Since.At > forecast.Pitched ? beer.Since : state.Pitches[0].Moment;
        yield return new(
            Rule,
            state.Subject,
            cause.Entry,
            due,
            due + rules.CloseValveOverdue,
            [
                new("variant", forecast.Readings is [] ? "unread" : "read"),
                new("wanted", plan.Wanted),
                new("close", plan.CloseAt),
                new("pressure", plan.Gauge),
                .. forecast.Readings is [.., var last]
                    ? new Number[] { new("gravity", last.Gravity), new("since", last.Moment.At) }
                    : [],
            ]
        )
        {
            TankId = tank.Id,
        };
    }

    // From the reading that was low enough; else when the forecast expects it, never before what was read last.
    private static DateTimeOffset? DueAt(BatchForecast forecast, ValvePlan plan)
    {
        var last = forecast.Readings is [.., var read] ? read : default(GravityFact?);
        if (last is { } low && low.Gravity <= plan.CloseAt)
        {
            return low.Moment.At;
        }

        var extract = new DegreesPlato(Strength.Plato(plan.CloseAt));
        return forecast.At(forecast.Outlook.TimeTo(extract).Value.Likely) is not { } expected ? null
            : last is { } high && high.Moment.At > expected ? high.Moment.At
            : expected;
    }
}
