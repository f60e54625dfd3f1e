using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Items;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>The stock, for programs.</summary>
internal static class ApiItems
{
    public static void MapApiItems(this IEndpointRouteBuilder api)
    {
        api.MapGet("/items", ListAsync)
            .Reads("Items", "Chemicals, parts and gas in stock, by number: how much is left and when more is bought.")
            .IsPaged();
        api.MapGet("/items/{number:int}", OneAsync).Reads("Items", "One item: what it is and how much is left.");
    }

    private static async Task<IResult> ListAsync(HttpRequest request, FloorReader reader, CancellationToken stop)
    {
        var (limit, after) = (ApiPages.Limit(request), ApiPages.Whole(request, "after") ?? 0);
        var items = (await reader.ItemsAsync(stop))
            .Floor.Items.Where(item => item.Thing.Number > after)
            .OrderBy(item => item.Thing.Number)
            .Take(limit + 1)
            .ToArray();
        return ApiPages.Page(
            items.Take(limit).Select(item => Shown(item.Thing, item.State)),
            items.Length > limit ? items[limit - 1].Thing.Number.ToString(CultureInfo.InvariantCulture) : null
        );
    }

    private static async Task<IResult> OneAsync(int number, FloorReader reader, Wording words, CancellationToken stop)
    {
        if (await reader.ItemAsync(number, stop) is not { } view)
        {
            return ApiProblems.Of(StatusCodes.Status404NotFound, words, "status-404");
        }

        var (thing, state) = view.Floor.Items[0];
        return Results.Json(Shown(thing, state));
    }

    private static JsonObject Shown(Item thing, ItemState state)
    {
        var shown = Api.Shown.Of(thing);
        shown["number"] = thing.Number;
        shown["state"] = Api.Shown.Of(state);
        return shown;
    }
}
