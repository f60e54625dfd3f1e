using BrewFloor.Brewing;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Calculators;

/// <summary>One number or choice that a calculator asks for; a usual value is said below and never typed for the person.</summary>
public sealed partial class CalculatorField(Wording wording)
{
    private const int Few = 3; // choices that are seen at once; more are a list

    [Parameter, EditorRequired]
    public required Asked Asked { get; set; }

    [Parameter, EditorRequired]
    public required Input Input { get; set; }

    private ChoiceInput? Choice => Input as ChoiceInput;

    private QuantityInput? Quantity => Input as QuantityInput;

    private string Id => "c-" + Input.Name;

    private string Label => wording.Calculator("input." + Input.Name);

    private MeasureUnit Unit => Asked.UnitOf(Quantity!);

    private Refusal? Problem => Asked.Problems.GetValueOrDefault(Input.Name);

    private string? Invalid => Problem is null ? null : "true";

    private string? Value =>
        Asked.TextOf(Input)
        ?? (Quantity!.HasUsual ? null : FigureWords.Typed(Asked.Given.Figure(Input.Name), Unit, wording.Figures));

    private string? Hint =>
        Asked.OriginOf(Input) switch
        {
            Origin.Assumed => wording["calc-left-empty", new Number("value", Usual)],
            Origin.Here => wording["calc-left-empty-here", new Number("value", Usual)],
            _ => null,
        };

    private string Usual => FigureWords.Of(Asked.Given.Figure(Input.Name), wording.Figures);
}
