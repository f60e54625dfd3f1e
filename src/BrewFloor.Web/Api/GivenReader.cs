using System.Text.Json.Nodes;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>Reads what a program gives to a calculator; what is wrong is told with what would be right.</summary>
internal sealed class GivenReader(Calculator calculator, JsonObject sent)
{
    /// <summary>Every input: as sent, or its usual value, which is said to be assumed.</summary>
    /// <exception cref="UnreadableException">Missing, unknown, of another unit, or out of its range.</exception>
    public Given Read(Length altitude)
    {
        var known = calculator.Inputs.Select(input => input.Name).ToArray();
        if (sent.Select(field => field.Key).Except(known, StringComparer.Ordinal).FirstOrDefault() is { } unknown)
        {
            throw new UnreadableException(unknown, "field-unknown", new Number("known", string.Join(", ", known)));
        }

        var given = Given.NothingTo(calculator);
        given = known.Contains("altitude", StringComparer.Ordinal) ? given.With("altitude", altitude.Meters) : given;
        return calculator.Inputs.Aggregate(given, Read);
    }

    /// <summary>A refusal of the arithmetic: about an input in the unit it was sent in, or about a number on the way.</summary>
    public static UnreadableException Refused(Calculator calculator, Refusal refusal, JsonObject sent, Wording words)
    {
        if (calculator.InputOf(refusal) is { } input)
        {
            var unit = input.Measure.Find(sent[input.Name]?["unit"]?.GetValue<string>()) ?? input.Measure.First;
            return Outside(input, input.InUnit(refusal, unit));
        }

        return new UnreadableException(
            "",
            "no-answer",
            new("what", words.Calculator("through." + refusal.What)),
            new("from", refusal.From),
            new("to", refusal.To),
            new("unit", refusal.Unit)
        );
    }

    private Given Read(Given given, Input input) =>
        input switch
        {
            ChoiceInput choice when sent[choice.Name] is { } option => given.With(
                choice.Name,
                OptionOf(choice, option)
            ),
            QuantityInput quantity when sent[quantity.Name] is { } value => given.With(
                quantity.Name,
                ValueOf(quantity, value)
            ),
            QuantityInput needed when needed.MustBeGiven(given) => throw new UnreadableException(
                needed.Name,
                "field-missing"
            ),
            _ => given,
        };

    private static string OptionOf(ChoiceInput choice, JsonNode sent)
    {
        var option = Numbers.Text(sent, choice.Name);
        return choice.Options.Contains(option, StringComparer.Ordinal)
            ? option
            : throw new UnreadableException(
                choice.Name,
                "choice-unknown",
                new("choice", option),
                new("known", string.Join(", ", choice.Options))
            );
    }

    private static double ValueOf(QuantityInput input, JsonNode sent)
    {
        var (value, unit) = Quantity(input, sent);
        var figure = new Figure(unit.ToFirst(value), input.Measure);
        return input.RefusalOf(figure, unit) is { } outside ? throw Outside(input, outside) : figure.Value;
    }

    // A measure without a unit is a plain number.
    private static (double Value, MeasureUnit Unit) Quantity(QuantityInput input, JsonNode sent)
    {
        var units = new Number("units", string.Join(", ", input.Measure.Units.Select(unit => unit.Symbol)));
        if (input.Measure.First.Symbol.Length == 0)
        {
            return (Numbers.Double(sent, input.Name), input.Measure.First);
        }

        if (
            sent is not JsonObject { Count: 2 } quantity
            || !quantity.ContainsKey("value")
            || quantity["unit"] is not JsonValue symbol
            || !symbol.TryGetValue<string>(out var text)
        )
        {
            throw new UnreadableException(input.Name, "quantity-wanted", units);
        }

        return (
            Numbers.Double(quantity["value"], input.Name),
            input.Measure.Find(text)
                ?? throw new UnreadableException(input.Name, "unit-unknown", new Number("unit", text), units)
        );
    }

    private static UnreadableException Outside(QuantityInput input, Refusal refusal) =>
        refusal.Code is "not-whole"
            ? new(input.Name, "whole-number-wanted")
            : new(
                input.Name,
                "quantity-outside",
                new("from", refusal.From),
                new("to", refusal.To),
                new("unit", refusal.Unit)
            );
}
