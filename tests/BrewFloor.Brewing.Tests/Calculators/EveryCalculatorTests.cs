using System.Text.RegularExpressions;
using BrewFloor.Brewing.Calculators;

namespace BrewFloor.Brewing.Tests.Calculators;

/// <summary>What every question must bring, whatever it asks.</summary>
public partial class EveryCalculatorTests
{
    private const int Tries = 300;

    public static TheoryData<string> Names => [.. AllCalculators.All.Select(calculator => calculator.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void It_answers_with_what_stands_in_it_at_first(string name)
    {
        var calculator = AllCalculators.ByName[name];

        var answer = calculator.Answer(Given.NothingTo(calculator));

        Assert.True(answer.IsDone, $"{answer.Refusal}");
        Assert.Distinct(answer.Value.Results.Select(result => result.Name));
        Assert.All(answer.Value.Results, IsInItsBand);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void It_says_what_it_asks_where_it_comes_from_and_what_holds_it(string name)
    {
        var calculator = AllCalculators.ByName[name];

        Assert.NotEmpty(calculator.Formula);
        Assert.NotEmpty(calculator.Sources);
        Assert.Distinct(calculator.Inputs.Select(input => input.Name));
        Assert.All(
            (IEnumerable<string>)[name, .. calculator.Inputs.Select(input => input.Name)],
            text => Assert.Matches(Kebab(), text)
        );
        Assert.Empty(calculator.Checks.Except(Check.All.Keys));
        Assert.All(
            calculator.Inputs.OfType<QuantityInput>(),
            input => Assert.InRange(input.Start, input.From, input.To)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Whatever_is_typed_within_the_ranges_gives_numbers_or_a_refusal_and_never_a_failure(string name)
    {
        var calculator = AllCalculators.ByName[name];
        var chance = new Random(17);

        for (var i = 0; i < Tries; i++)
        {
            if (calculator.Answer(Anything(calculator, chance)).Gives(out var answer))
            {
                Assert.All(answer.Results, IsInItsBand);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_curve_goes_through_the_answer(string name)
    {
        var calculator = AllCalculators.ByName[name];
        if (calculator.Plot is not { } plot)
        {
            return;
        }

        var given = Given.NothingTo(calculator);
        var curve = calculator.Curve(given);
        var (at, value) = (
            given.Figure(plot.Over).Value,
            calculator
                .Answer(given)
                .Value.Results.First(r => string.Equals(r.Name, plot.Of, StringComparison.Ordinal))
                .Value.Value
        );

        Assert.InRange(curve.Count, 20, 61);
        Assert.InRange(at, curve[0].Over.Value, curve[^1].Over.Value);
        var (below, above) = (curve.Last(p => p.Over.Value <= at), curve.First(p => p.Over.Value >= at));
        Assert.InRange(
            value,
            Math.Min(below.Of.Value, above.Of.Value) - 1e-9,
            Math.Max(below.Of.Value, above.Of.Value) + 1e-9
        );
    }

    [Fact]
    public void Nothing_is_asked_twice_under_one_name() =>
        Assert.Distinct(AllCalculators.All.Select(calculator => calculator.Name));

    private static void IsInItsBand(Result result)
    {
        Assert.True(double.IsFinite(result.Value.Value), result.Name);
        Assert.True((result.Low ?? result.Value).Value <= result.Value.Value + 1e-9, $"{result}");
        Assert.True((result.High ?? result.Value).Value >= result.Value.Value - 1e-9, $"{result}");
    }

    // At the ends as often as between.
    private static Given Anything(Calculator calculator, Random chance) =>
        calculator.Inputs.Aggregate(
            Given.NothingTo(calculator),
            (given, input) =>
                input switch
                {
                    ChoiceInput choice => given.With(choice.Name, choice.Options[chance.Next(choice.Options.Count)]),
                    QuantityInput quantity => given.With(quantity.Name, Within(quantity, chance)),
                    _ => given,
                }
        );

    private static double Within(QuantityInput input, Random chance)
    {
        var value = chance.Next(4) switch
        {
            0 => input.From,
            1 => input.To,
            2 => input.Start,
            _ => input.From + (chance.NextDouble() * (input.To - input.From)),
        };
        return input.Measure == Measure.Count ? Math.Round(value) : value;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Kebab();
}
