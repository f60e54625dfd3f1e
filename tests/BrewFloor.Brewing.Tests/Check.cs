using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.VisualBasic.FileIO;
using Xunit.Sdk;
using Xunit.v3;

namespace BrewFloor.Brewing.Tests;

/// <summary>
/// A row of <c>tests/samples/checks.csv</c> or of our own <c>samples/values.csv</c>: a published or independently computed
/// number, with its source.
/// </summary>
public sealed partial record Check(
    string Id,
    string Topic,
    string Input,
    string Expected,
    string Tolerance,
    string Source
)
{
    private const string Figure = @"-?\d+(\.\d+)?(e-?\d+)?";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    /// <summary>published, computed-independently, common-practice or from-memory.</summary>
    public string Provenance { get; init; } = "";

    public static IReadOnlyDictionary<string, Check> All { get; } =
        new[] { "checks.csv", "values.csv" }.SelectMany(Read).ToDictionary(c => c.Id);

    /// <summary>The number after "name=" or "name " in the input.</summary>
    public double Given(string name) =>
        double.Parse(
            Regex
                .Match(
                    Input,
                    $@"(?<!\w){Regex.Escape(name)}\s*=?\s*(?<n>{Figure})",
                    RegexOptions.ExplicitCapture,
                    Patience
                )
                .Groups["n"]
                .Value,
            CultureInfo.InvariantCulture
        );

    /// <summary>The answers, in the order of the row, are each within the row's tolerance.</summary>
    public void Agrees(params double[] answers)
    {
        var (expected, tolerance) = (Numbers(Expected), Numbers(Tolerance));
        Assert.Equal(expected.Length, answers.Length);
        for (var i = 0; i < answers.Length; i++)
        {
            var room = Math.Abs(tolerance[Math.Min(i, tolerance.Length - 1)]);
            room *= Tolerance.Contains("% relative", StringComparison.Ordinal) ? Math.Abs(expected[i]) / 100 : 1;
            Assert.True(
                Math.Abs(answers[i] - expected[i]) <= room * (1 + 1e-9),
                $"{Id}: {answers[i]} is not {expected[i]} within {room}. Source: {Source}"
            );
        }
    }

    public override string ToString() => $"{Id}, {Topic} ({Source})";

    /// <summary>How many numbers it holds, those of our own model left out.</summary>
    public int Values => Math.Max(1, Part().Split(Expected).Count(IsPrinted));

    private static bool IsPrinted(string part) =>
        Number().IsMatch(part) && !part.TrimStart().StartsWith("model", StringComparison.Ordinal);

    // "RE 4.305; A 3.970" is two numbers, and so are "7363 kJ = 2.05 kWh" and "25.1 mg O2 (0.25 mg/L)": the first of each
    // part. "CO2" is a name.
    private static double[] Numbers(string text) =>
        [.. Part().Split(text).Select(part => double.Parse(Number().Match(part).Value, CultureInfo.InvariantCulture))];

    private static IEnumerable<Check> Read(string name)
    {
        using var file = new TextFieldParser(Path.Combine(AppContext.BaseDirectory, "samples", name));
        file.SetDelimiters(",");
        file.HasFieldsEnclosedInQuotes = true;
        _ = file.ReadFields();
        while (file.ReadFields() is { } f)
        {
            yield return new Check(f[0], f[1], f[2], f[3], f[4], f[5]) { Provenance = f[6] };
        }
    }

    [GeneratedRegex(@";| = | -> | / |, |\[|\((?=\d)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Part();

    [GeneratedRegex($@"(?<![A-Za-z\d.]){Figure}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}

/// <summary>Runs a test once with a row of <c>tests/samples/checks.csv</c>, under the row's name.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class CheckAttribute(params string[] ids) : DataAttribute
{
    public IReadOnlyList<string> Ids { get; } = ids;

    public override bool SupportsDiscoveryEnumeration() => false;

    public override ValueTask<IReadOnlyCollection<ITheoryDataRow>> GetData(
        MethodInfo testMethod,
        DisposalTracker disposalTracker
    ) =>
        new([
            .. Ids.Select(id => new TheoryDataRow<Check>(Check.All[id])
            {
                TestDisplayName = $"{id}: {testMethod.Name}",
            }),
        ]);
}
