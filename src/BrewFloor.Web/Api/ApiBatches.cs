using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Batches;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>Batches, for programs.</summary>
internal static class ApiBatches
{
    public static void MapApiBatches(this IEndpointRouteBuilder api)
    {
        api.MapGet("/batches", ListAsync)
            .Reads("Batches", "Every batch that anything was logged about, the newest first.")
            .IsPaged();
        api.MapGet("/batches/{number:int}", OneAsync)
            .Reads("Batches", "One batch: its stage, its gravities, where every litre is or went.");
        api.MapGet("/batches/{number:int}/forecast", ForecastAsync)
            .Reads(
                "Batches",
                "Where a batch ends and when, with 80 and 95 % bands, what looks wrong, and when to close the valve; or why nothing is foretold. With ?gravity=1.020 (&unit=SG or °P) also when it stands there."
            );
    }

    private static async Task<IResult> ListAsync(HttpRequest request, FloorReader reader, CancellationToken stop)
    {
        var limit = ApiPages.Limit(request);
        var before = ApiPages.Whole(request, "after");
        var view = await reader.BatchesAsync((int?)Math.Min(before ?? int.MaxValue, int.MaxValue), limit + 1, stop);
        var batches = view.Floor.Batches;
        return ApiPages.Page(
            batches.Take(limit).Select(batch => Shown(batch.Thing, batch.State, view.Floor)),
            batches.Count > limit ? batches[limit - 1].Thing.Number.ToString(CultureInfo.InvariantCulture) : null
        );
    }

    private static async Task<IResult> OneAsync(
        int number,
        FloorReader reader,
        Wording words,
        CancellationToken stop
    ) =>
        await reader.BatchAsync(number, stop) is { } view
            ? Results.Json(Shown(view.Floor.Batches[0].Thing, view.Floor.Batches[0].State, view.Floor))
            : NoSuchBatch(number, words);

    private static async Task<IResult> ForecastAsync(
        int number,
        HttpRequest request,
        FloorReader reader,
        Wording words,
        CancellationToken stop
    )
    {
        var asked = AskedGravity(request);
        if (await reader.BatchAsync(number, stop) is not { } view)
        {
            return NoSuchBatch(number, words);
        }

        var forecast = await reader.ForecastAsync(view, stop);
        var shown = ShownForecast.Of(number, forecast, view.Now, words);
        if (Forecasts.ValveOf(view) is { } valve)
        {
            shown["close_valve"] = ShownForecast.Of(valve, view.Floor.Batches[0].State.InTanks[0].ShutIn, words);
        }

        if (asked is { } gravity && forecast.Gives(out var foretold))
        {
            shown["asked"] = ShownForecast.Of(foretold, gravity);
        }

        return Results.Json(shown);
    }

    // "?gravity=1.020", or "?gravity=5&unit=°P".
    private static SpecificGravity? AskedGravity(HttpRequest request)
    {
        if (request.Query["gravity"].ToString() is not { Length: > 0 } text)
        {
            return null;
        }

        var value = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new UnreadableException("gravity", "number-wanted");
        var unit = request.Query["unit"].ToString() is { Length: > 0 } said ? said : "SG";
        var (stored, _) = ApiQuantities.Read(ApiQuantities.Shown(value, unit), typeof(SpecificGravity), "gravity");
        return SpecificGravity.Of(stored.GetValue<double>());
    }

    private static IResult NoSuchBatch(int number, Wording words) =>
        ApiProblems.Of(StatusCodes.Status404NotFound, words, "no-such-batch", new Number("number", number));

    private static JsonObject Shown(Batch thing, BatchState state, Floor floor)
    {
        var shown = Api.Shown.Of(thing);
        shown["number"] = thing.Number;
        shown["stage"] = Api.Shown.Of(state.StageOf(thing, floor.Rules));
        shown["how_far"] = state.HowFar(thing);
        shown["tanks"] = new JsonArray([
            .. floor
                .Tanks.Where(t => state.InTanks.Any(beer => beer.TankId == t.Thing.Id))
                .Select(t => (JsonNode)t.Thing.Code),
        ]);
        shown["state"] = Api.Shown.Of(state);
        return shown;
    }
}
