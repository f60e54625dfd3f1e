using BrewFloor.Brewing;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The forecast of a batch with what its strain did before; earlier batches are read only where they count.</summary>
internal static class Forecasts
{
    /// <param name="view">Of the batch, as <see cref="FloorReader.BatchAsync"/> gives it.</param>
    public static async Task<Outcome<BatchForecast>> ForecastAsync(
        this FloorReader reader,
        FloorView view,
        CancellationToken stop
    )
    {
        var (thing, state) = view.Floor.Batches[0];
        var earlier = state.MayBeForetold(thing, view.Floor.Rules)
            ? await reader.EarlierOfStrainAsync(thing.Number, stop)
            : [];
        return state.ForecastOf(thing, earlier, view.Floor.Rules, view.Now);
    }

    /// <summary>When the tank it ferments in is closed so that it makes its own gas; null: it lies in none.</summary>
    /// <param name="floor">Of the batch and its tank.</param>
    public static Outcome<ValvePlan>? ValveOf(this BatchForecast forecast, Floor floor)
    {
        var (thing, state) = floor.Batches[0];
        return state.InTanks is [var beer, ..]
            ? ValvePlan.For(
                state,
                thing,
                beer,
                floor.Tank(beer.TankId).Thing,
                forecast.Outlook.Final.Likely,
                floor.Rules
            )
            : default(Outcome<ValvePlan>?);
    }
}
