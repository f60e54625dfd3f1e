using System.Text.Json.Nodes;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>Tanks, for programs: what they are, how they stand, and how they stood.</summary>
internal static class ApiTanks
{
    public static void MapApiTanks(this IEndpointRouteBuilder api)
    {
        api.MapGet("/tanks", ListAsync)
            .Reads("Tanks", "Every tank in the house and how it stands now, by code.")
            .IsPaged();
        api.MapGet("/tanks/{code}", OneAsync)
            .Reads(
                "Tanks",
                "One tank, with its ports, what is on them and how it fits: now, at a moment, or as it was known then."
            )
            .Takes("at", "An instant: how it stood just after it.")
            .Takes("known", "An instant: from what the log knew then; without it, from what it knows today.");
    }

    private static async Task<IResult> ListAsync(HttpRequest request, FloorReader reader, CancellationToken stop)
    {
        var view = await reader.FloorAsync(stop);
        return ApiPages.Page(
            request,
            view.Floor.Tanks,
            tank => tank.Thing.Code,
            tank => Shown(tank.Thing, tank.State, view, view.Now)
        );
    }

    private static async Task<IResult> OneAsync(
        string code,
        HttpRequest request,
        FloorReader reader,
        Wording words,
        CancellationToken stop
    )
    {
        var (at, known) = (ApiPages.Instant(request, "at"), ApiPages.Instant(request, "known"));
        if (await reader.TankAsync(code, stop) is not { } view)
        {
            return ApiProblems.Of(StatusCodes.Status404NotFound, words, "no-such-tank", new Number("code", code));
        }

        var (thing, state) = view.Floor.Tanks[0];
        if (at is null && known is null)
        {
            return Results.Json(Shown(thing, state, view, view.Now));
        }

        var then = await reader.AsItWasAsync(Subject.Tank(thing.Id), at ?? known ?? view.Now, known, stop);
        var beer = ((TankState)then.State).BatchId is { } batch
            ? await reader.ForAsync([Subject.Batch(batch)], stop)
            : view;
        var shown = Shown(thing, (TankState)then.State, beer, then.At);
        shown["at"] = Api.Shown.Of(then.At);
        shown["known"] = Api.Shown.Of(then.Known);
        return Results.Json(shown);
    }

    /// <param name="view">Holds the batch in it.</param>
    /// <param name="now">What is worked out is worked out for this moment.</param>
    private static JsonObject Shown(Tank thing, TankState state, FloorView view, DateTimeOffset now)
    {
        HouseRules rules = view.Floor.Rules;
        var shown = Api.Shown.Of(thing);
        shown["total"] = ApiQuantities.Shown(thing.Total.Liters, "L");
        shown["soil"] = Api.Shown.Of(Sanitizing.SoilNow(thing, state, rules, now));
        shown["sanitized_until"] = Sanitizing.IsSpoiledByOpening(thing, state)
            ? null
            : Api.Shown.Of(state.SanitizedUntil(rules));
        shown["batch"] = view
            .Floor.Batches.Where(b => b.Thing.Id == state.BatchId)
            .Select(b => (int?)b.Thing.Number)
            .FirstOrDefault();
        shown["fits"] = Fits(thing, state);
        shown["state"] = Api.Shown.Of(state);
        return shown;
    }

    // Of every part on a port: flush, with a step of these bores, apart by these flanges, or unknown.
    private static JsonArray Fits(Tank thing, TankState state) =>
        [
            .. from fitting in state.Fitted
            let port = thing.Port(fitting.Port)
            where port is not null
            select Fit(fitting.Port, Fittings.FitOf(port, fitting)),
        ];

    private static JsonObject Fit(int port, ClampFit? fit) =>
        fit switch
        {
            null => new() { ["port"] = port, ["fit"] = "unknown" },
            { Apart: { } apart } => Fit(port, "apart", apart.One.Flange, apart.Other.Flange),
            { Step: { } step } => Fit(port, "step", step.One.Bore, step.Other.Bore),
            _ => new() { ["port"] = port, ["fit"] = "flush" },
        };

    private static JsonObject Fit(int port, string fit, Length one, Length other) =>
        new()
        {
            ["port"] = port,
            ["fit"] = fit,
            ["one"] = ApiQuantities.Shown(Math.Round(one.Millimeters, 2), "mm"),
            ["other"] = ApiQuantities.Shown(Math.Round(other.Millimeters, 2), "mm"),
        };
}
