using System.Text.Json;
using System.Text.Json.Nodes;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>The calculators, for programs: what each asks and stands on, and its answers.</summary>
internal static class ApiCalculators
{
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false, MaxDepth = 8 };

    public static void MapApiCalculators(this IEndpointRouteBuilder api)
    {
        api.MapGet("/calculate", List)
            .Reads(
                "Calculators",
                "Every calculator: its question, inputs with units and ranges, formula, sources, accuracy."
            )
            .IsPaged();
        api.MapGet("/calculate/{name}", One).Reads("Calculators", "One calculator.");
        api.MapPost("/calculate/{name}", ComputeAsync)
            .Reads("Calculators", "Computes: inputs in, results with their ranges and findings out. Nothing is stored.")
            .WithMetadata(new TakesInputs());
    }

    private static IResult List(HttpRequest request, RulesOnHand rules, Wording words) =>
        ApiPages.Page(
            request,
            AllCalculators.All,
            calculator => calculator.Name,
            calculator => ShownCalculators.Of(calculator, rules.Altitude, words)
        );

    private static IResult One(string name, RulesOnHand rules, Wording words) =>
        AllCalculators.ByName.TryGetValue(name, out var calculator)
            ? Results.Json(ShownCalculators.Of(calculator, rules.Altitude, words))
            : NotThere(name, words);

    private static async Task<IResult> ComputeAsync(
        string name,
        HttpRequest request,
        RulesOnHand rules,
        Wording words,
        CancellationToken stop
    )
    {
        if (!AllCalculators.ByName.TryGetValue(name, out var calculator))
        {
            return NotThere(name, words);
        }

        if (!request.HasJsonContentType())
        {
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        }

        var sent = await BodyAsync(request, stop);
        var given = new GivenReader(calculator, sent).Read(rules.Altitude);
        var found = calculator.Answer(given);
        return found.Gives(out var answer)
            ? Results.Json(ShownCalculators.Of(calculator, sent, (given, answer), words))
            : throw GivenReader.Refused(calculator, found.Refusal!, sent, words);
    }

    private static IResult NotThere(string name, Wording words) =>
        ApiProblems.Of(StatusCodes.Status404NotFound, words, "no-such-calculator", new Number("name", name));

    private static async Task<JsonObject> BodyAsync(HttpRequest request, CancellationToken stop)
    {
        try
        {
            return await JsonNode.ParseAsync(request.Body, nodeOptions: null, Strict, stop) as JsonObject
                ?? throw new UnreadableException("", "object-wanted");
        }
        catch (JsonException e)
        {
            throw new UnreadableException("", "body-unreadable", new Number("line", (int)(e.LineNumber ?? 0) + 1));
        }
    }
}
