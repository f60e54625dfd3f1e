using BrewFloor.Brewing;
using BrewFloor.Domain.Batches;
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

    /// <summary>When the tank it ferments in is closed so that it makes its own gas; null: it lies in none, or in several.</summary>
    /// <param name="view">Of the batch, as <see cref="FloorReader.BatchAsync"/> gives it.</param>
    public static Outcome<ValvePlan>? ValveOf(FloorView view)
    {
        var (thing, state) = view.Floor.Batches[0];
        return state.InTanks is [var beer]
            ? ValvePlan.For(state, thing, beer, view.Floor.Tank(beer.TankId).Thing, view.Floor.Rules, view.Now)
            : default(Outcome<ValvePlan>?);
    }
}
