using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>Yeast, for programs.</summary>
internal static class ApiCultures
{
    public static void MapApiCultures(this IEndpointRouteBuilder api)
    {
        api.MapGet("/cultures", ListAsync)
            .Reads("Cultures", "Every lot of yeast that was logged, the newest first.")
            .IsPaged();
        api.MapGet("/cultures/{id:guid}", OneAsync)
            .Reads("Cultures", "One lot of yeast: how much is left, its generation, its parents.");
    }

    private static async Task<IResult> ListAsync(HttpRequest request, FloorReader reader, CancellationToken stop)
    {
        var (limit, before) = (ApiPages.Limit(request), ApiPages.Whole(request, "after") ?? long.MaxValue);
        var cultures = (await reader.CulturesAsync(stop))
            .Floor.Cultures.Where(culture => culture.Thing.Number < before)
            .OrderByDescending(culture => culture.Thing.Number)
            .Take(limit + 1)
            .ToArray();
        return ApiPages.Page(
            cultures.Take(limit).Select(culture => Shown(culture.Thing, culture.State)),
            cultures.Length > limit ? cultures[limit - 1].Thing.Number.ToString(CultureInfo.InvariantCulture) : null
        );
    }

    private static async Task<IResult> OneAsync(Guid id, FloorReader reader, Wording words, CancellationToken stop)
    {
        if (await reader.CultureAsync(id, stop) is not { } view)
        {
            return ApiProblems.Of(StatusCodes.Status404NotFound, words, "status-404");
        }

        var (thing, state) = view.Floor.Culture(id);
        return Results.Json(Shown(thing, state));
    }

    private static JsonObject Shown(Culture thing, CultureState state)
    {
        var shown = Api.Shown.Of(thing);
        shown["number"] = thing.Number;
        shown["is_usable"] = state.IsUsable;
        shown["state"] = Api.Shown.Of(state);
        return shown;
    }
}
