using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Calculators;

/// <summary>For who doubts a number: formula, sources, ranges, how sure, and which inputs were given and which assumed.</summary>
public sealed partial class HowComputed(Wording wording)
{
    [Parameter, EditorRequired]
    public required Asked Asked { get; set; }

    private Calculator Calculator => Asked.Calculator;

    private string ValueOf(Input input) =>
        input is QuantityInput
            ? FigureWords.Of(Asked.Given.Figure(input.Name), wording.Figures)
            : wording.Calculator("choice." + Asked.Given.Choice(input.Name));

    private string RangeOf(Input input)
    {
        if (input is not QuantityInput quantity)
        {
            return string.Join(", ", ((ChoiceInput)input).Options.Select(o => wording.Calculator("choice." + o)));
        }

        var unit = FigureWords.OwnOf(quantity.Measure, wording.Figures.Units);
        return wording[
                "calc-between",
                new("low", FigureWords.Number(new Figure(quantity.From, quantity.Measure), unit, wording.Figures)),
                new("high", FigureWords.Number(new Figure(quantity.To, quantity.Measure), unit, wording.Figures))
            ] + (unit.Symbol.Length > 0 ? $" {unit.Symbol}" : "");
    }

    private string OriginOf(Input input) =>
        Asked.OriginOf(input) switch
        {
            Origin.Typed => wording["calc-origin-typed"],
            Origin.Here => wording["calc-origin-here"],
            Origin.Example => wording["calc-origin-example"],
            _ => wording["calc-origin-assumed"],
        };
}
