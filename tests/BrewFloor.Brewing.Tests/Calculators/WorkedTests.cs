using System.Globalization;
using BrewFloor.Brewing.Calculators;
using Microsoft.VisualBasic.FileIO;

namespace BrewFloor.Brewing.Tests.Calculators;

/// <summary>An answer worked out apart from this code, by the formula beside it, and not by its own example.</summary>
/// <param name="Given">"name=value" in first units, or "choice=option".</param>
/// <param name="Within">How far the answer may be off.</param>
/// <param name="How">The formula it was worked out by.</param>
public sealed record Worked(string Calculator, string Given, string Result, double Expected, double Within, string How)
{
    public static IReadOnlyList<Worked> All { get; } = [.. Read()];

    public override string ToString() => $"{Calculator}, {Result}: {How}";

    private static IEnumerable<Worked> Read()
    {
        using var file = new TextFieldParser(Path.Combine(AppContext.BaseDirectory, "samples", "worked.csv"));
        file.SetDelimiters(",");
        file.HasFieldsEnclosedInQuotes = true;
        _ = file.ReadFields();
        while (file.ReadFields() is { } f)
        {
            yield return new(f[0], f[1], f[2], Number(f[3]), Number(f[4]), f[5]);
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

public class WorkedTests
{
    public static TheoryData<Worked> All => [.. Worked.All];

    [Theory]
    [MemberData(nameof(All), DisableDiscoveryEnumeration = true)]
    public void A_calculator_answers_what_was_worked_out_apart_from_it(Worked worked)
    {
        var calculator = AllCalculators.ByName[worked.Calculator];
        var given = worked.Given.Split(' ').Aggregate(Given.NothingTo(calculator), With);

        var answer = calculator.Answer(given);

        Assert.Null(answer.Refusal);
        Assert.Equal(worked.Expected, answer.Value.Find(worked.Result)!.Value.Value, worked.Within + 1e-9);
    }

    [Fact]
    public void None_is_a_calculators_own_example() =>
        Assert.All(
            Worked.All,
            worked =>
            {
                var starts = AllCalculators
                    .ByName[worked.Calculator]
                    .Inputs.OfType<QuantityInput>()
                    .Select(input => string.Create(CultureInfo.InvariantCulture, $"{input.Name}={input.Start}"));
                Assert.NotEmpty(worked.Given.Split(' ').Except(starts, StringComparer.Ordinal));
            }
        );

    [Fact]
    public void Every_calculator_was_worked_out_at_least_once() =>
        Assert.Equal(
            AllCalculators.All.Select(calculator => calculator.Name).Order(StringComparer.Ordinal),
            Worked.All.Select(worked => worked.Calculator).Distinct().Order(StringComparer.Ordinal)
        );

    private static Given With(Given given, string said)
    {
        var (name, value) = said.Split('=') is [var left, var right] ? (left, right) : (said, "");
        return double.TryParse(value, CultureInfo.InvariantCulture, out var number)
            ? given.With(name, number)
            : given.With(name, value);
    }
}
