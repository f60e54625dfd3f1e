using System.Text.Json.Nodes;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>Calculators and their answers as programs see them, made from the same description as their pages.</summary>
internal static class ShownCalculators
{
    /// <param name="altitude">Of the house: what is taken where none is sent.</param>
    public static JsonObject Of(Calculator calculator, Length altitude, Wording words) =>
        new()
        {
            ["name"] = calculator.Name,
            ["subject"] = calculator.Subject.ToString().ToLowerInvariant(),
            ["question"] = words.Calculator(calculator.Name + ".question"),
            ["cautions"] = Cautions(calculator, words),
            ["inputs"] = new JsonArray([.. calculator.Inputs.Select(input => Of(input, altitude, words))]),
            ["results"] = new JsonArray([.. Results(calculator).Select(result => Promised(result, words))]),
            ["formula"] = Texts(calculator.Formula),
            ["sources"] = Texts(calculator.Sources),
            ["accuracy"] = words.Calculator(calculator.Name + ".accuracy"),
            ["assumes"] = words.Calculator(calculator.Name + ".assumes"),
        };

    public static JsonObject Of(
        Calculator calculator,
        JsonObject sent,
        (Given Given, Answer Answer) found,
        Wording words
    ) =>
        new()
        {
            ["name"] = calculator.Name,
            ["question"] = words.Calculator(calculator.Name + ".question"),
            ["cautions"] = Cautions(calculator, words),
            ["results"] = new JsonArray([.. found.Answer.Results.Select(result => Of(result, words))]),
            ["findings"] = new JsonArray([
                .. found.Answer.Findings.Select(finding => new JsonObject
                {
                    ["code"] = finding.Code,
                    ["weight"] = Shown.Of(finding.Weight),
                    ["text"] = words.Calculator("finding." + finding.Code),
                }),
            ]),
            ["inputs"] = new JsonObject(
                calculator.Inputs.Select(input =>
                    KeyValuePair.Create<string, JsonNode?>(
                        input.Name,
                        Of(input, found.Given, !sent.ContainsKey(input.Name))
                    )
                )
            ),
            ["accuracy"] = words.Calculator(calculator.Name + ".accuracy"),
        };

    public static JsonNode Of(Figure figure) =>
        figure.Measure.First.Symbol is { Length: > 0 } unit
            ? ApiQuantities.Shown(figure.Value, unit)
            : JsonValue.Create(figure.Value);

    private static JsonObject Of(Input input, Length altitude, Wording words)
    {
        var shown = new JsonObject { ["name"] = input.Name, ["label"] = words.Calculator("input." + input.Name) };
        if (input is ChoiceInput choice)
        {
            shown["options"] = Texts(choice.Options);
        }
        else if (input is QuantityInput quantity)
        {
            shown["measure"] = quantity.Measure.Name;
            shown["units"] = Texts(quantity.Measure.Units.Select(unit => unit.Symbol).Where(unit => unit.Length > 0));
            shown["from"] = Of(new Figure(quantity.From, quantity.Measure));
            shown["to"] = Of(new Figure(quantity.To, quantity.Measure));
            var start = quantity.Name is "altitude" ? altitude.Meters : quantity.Start;
            shown[quantity.HasUsual ? "usual" : "example"] = Of(new Figure(start, quantity.Measure));
            if (quantity.OnlyWith is { } with)
            {
                shown["only_with"] = new JsonObject { [with.Choice] = with.Option };
            }
        }

        return shown;
    }

    private static JsonObject Of(Input input, Given given, bool isAssumed) =>
        new()
        {
            ["value"] = input is ChoiceInput ? given.Choice(input.Name) : Of(given.Figure(input.Name)),
            ["assumed"] = isAssumed,
        };

    private static JsonObject Of(Result result, Wording words)
    {
        var shown = new JsonObject
        {
            ["name"] = result.Name,
            ["label"] = words.Calculator("result." + result.Name),
            ["value"] = Of(result.Value),
        };
        if (result is { Low: { } low, High: { } high })
        {
            shown["low"] = Of(low);
            shown["high"] = Of(high);
        }

        return shown;
    }

    private static IReadOnlyList<Result> Results(Calculator calculator) =>
        calculator.Answer(Given.NothingTo(calculator)).Value.Results;

    private static JsonObject Promised(Result result, Wording words) =>
        new()
        {
            ["name"] = result.Name,
            ["label"] = words.Calculator("result." + result.Name),
            ["unit"] = result.Value.Measure.First.Symbol,
        };

    private static JsonArray Cautions(Calculator calculator, Wording words) =>
        Texts(calculator.Cautions.Select(caution => words.Calculator("caution." + caution)));

    private static JsonArray Texts(IEnumerable<string> texts) => [.. texts.Select(text => (JsonNode)text)];
}
