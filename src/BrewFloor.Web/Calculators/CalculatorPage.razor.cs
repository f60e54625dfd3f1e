using BrewFloor.Brewing.Calculators;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Calculators;

/// <summary>One question: its cautions, what it asks, the answer, the curve, and how all of it is computed.</summary>
public sealed partial class CalculatorPage(Wording wording, RulesOnHand rules, NavigationManager navigation)
{
    private Asked? _asked;

    [Parameter]
    public string Name { get; set; } = "";

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private Input[] Needed => [.. _asked!.Calculator.Inputs.Where(input => !IsUsual(input))];

    private Input[] Usual => [.. _asked!.Calculator.Inputs.Where(IsUsual)];

    private bool IsUsualOpen =>
        Usual.Any(input => _asked!.OriginOf(input) is Origin.Typed || _asked.Problems.ContainsKey(input.Name));

    private string ShortName =>
        _asked!.Answer is { } answer ? wording.Calculator("result." + answer.Results[0].Name) : "";

    private string ShortValue =>
        _asked!.Answer is { } answer ? FigureWords.Of(answer.Results[0].Value, wording.Figures) : "";

    protected override void OnInitialized()
    {
        if (AllCalculators.ByName.TryGetValue(Name, out var calculator))
        {
            _asked = Asked.Of(calculator, Http.Request.Query, wording.Figures.Units, rules.Altitude);
        }
        else
        {
            navigation.NotFound();
        }
    }

    private static bool IsUsual(Input input) => input is QuantityInput { HasUsual: true };
}
