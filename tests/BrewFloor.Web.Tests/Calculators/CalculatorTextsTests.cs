using System.Text.RegularExpressions;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Tests.Shell;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Calculators;

/// <summary>No calculator lacks a word, and no word is left of one that is gone.</summary>
public sealed partial class CalculatorTextsTests
{
    private const int Tries = 4000;

    [Fact]
    public void Every_text_a_calculator_asks_for_is_there() => Assert.Empty(Asked().Except(Texts.Calculators.Keys));

    [Fact]
    public void No_text_is_left_that_nothing_asks_for() => Assert.Empty(Texts.Calculators.Keys.Except(Asked()));

    [Fact]
    public void The_check_can_fail() =>
        Assert.Contains("slurry.question", Asked().Except(Texts.Calculators.Keys.Where(key => key[0] != 's')));

    private static HashSet<string> Asked() =>
        [
            .. AllCalculators.All.SelectMany(OfOne),
            .. AllCalculators.All.Select(calculator => $"subject.{calculator.Subject}"),
            .. Findings(),
        ];

    private static IEnumerable<string> OfOne(Calculator calculator)
    {
        var tried = Tried(calculator);
        return
        [
            $"{calculator.Name}.question",
            $"{calculator.Name}.assumes",
            $"{calculator.Name}.accuracy",
            .. calculator.Cautions.Select(caution => $"caution.{caution}"),
            .. calculator.Inputs.Select(input => $"input.{input.Name}"),
            .. calculator.Inputs.OfType<ChoiceInput>().SelectMany(c => c.Options.Select(option => $"choice.{option}")),
            .. tried
                .Where(answer => answer.IsDone)
                .SelectMany(answer => answer.Value.Results)
                .Select(r => $"result.{r.Name}"),
            .. tried
                .Select(answer => answer.Refusal)
                .Where(refusal => refusal is not null && calculator.InputOf(refusal) is null)
                .Select(refusal => $"through.{refusal!.What}"),
        ];
    }

    private static IEnumerable<string> Findings() =>
        Tree.FilesIn("src/BrewFloor.Brewing/Calculators/", ".cs")
            .SelectMany(file => Finding().Matches(Tree.Read(file)))
            .Select(match => $"finding.{match.Groups["code"].Value}");

    // Its own example, and the ends of all ranges, always the same ones: what a refusal may be about that nobody typed.
    private static Outcome<Answer>[] Tried(Calculator calculator)
    {
        var chance = new Random(5);
        return
        [
            calculator.Answer(Given.NothingTo(calculator)),
            .. Enumerable.Range(0, Tries).Select(_ => calculator.Answer(Anything(calculator, chance))),
        ];
    }

    private static Given Anything(Calculator calculator, Random chance) =>
        calculator
            .Inputs.OfType<QuantityInput>()
            .Where(_ => chance.Next(3) == 0)
            .Aggregate(
                calculator
                    .Inputs.OfType<ChoiceInput>()
                    .Aggregate(
                        Given.NothingTo(calculator),
                        (given, choice) => given.With(choice.Name, choice.Options[chance.Next(choice.Options.Count)])
                    ),
                (given, input) =>
                    given.With(
                        input.Name,
                        chance.Next(4) switch
                        {
                            0 => input.From,
                            1 => input.To,
                            _ => Math.Round(input.From + (chance.NextDouble() * (input.To - input.From)), 4),
                        }
                    )
            );

    [GeneratedRegex("""Finding\(\s*"(?<code>[a-z0-9-]+)"\s*,""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Finding();
}
