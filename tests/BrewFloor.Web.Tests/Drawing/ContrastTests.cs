using System.Globalization;
using System.Text.RegularExpressions;

namespace BrewFloor.Web.Tests.Drawing;

/// <summary>Contrast by WCAG 2.2: words 4.5 (in sunlight 7, success criterion 1.4.6), marks and borders 3 (1.4.11).</summary>
public sealed partial class ContrastTests
{
    private const string Words = """
        ink/ground ink/paper ink/sunk ink-2/ground ink-2/paper ink-2/sunk on-press/press on-overdue/overdue
        overdue-text/paper overdue-text/ground overdue-text/sunk on-due/due due-text/paper due-text/ground
        soon-text/paper on-done/done done/paper caution/paper on-hazard/hazard gravity/sunk ink/band
        """;

    private const string Marks = """
        edge/paper edge/sunk edge/ground focus/paper focus/ground overdue/paper overdue/ground due-text/paper wall/paper
        wall/inside wall/ground plastic-wall/paper soil-soiled/inside soil-rinsed/inside soil-clean/inside
        soil-sanitized/inside chill/paper band-edge/paper plan/sunk fitting/paper temperature/sunk pressure/sunk
        """;

    private static readonly string Css = File.ReadAllText(Wwwroot.File("tokens.css"));

    [Theory]
    [InlineData("light", 4.5)]
    [InlineData("dark", 4.5)]
    [InlineData("sunlight", 7)]
    public void Words_can_be_read(string theme, double least) => Assert.Empty(TooWeak(theme, Words, least));

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sunlight")]
    public void Marks_and_borders_can_be_seen(string theme) => Assert.Empty(TooWeak(theme, Marks, 3));

    [Fact]
    public void The_check_of_contrast_can_fail() =>
        Assert.Equal(["line/paper"], TooWeak("light", "line/paper ink/paper", 3));

    [Theory]
    [InlineData("#000000", "#ffffff", 21)]
    [InlineData("#777777", "#ffffff", 4.48)]
    public void Contrast_is_computed_as_the_standard_says(string one, string other, double ratio) =>
        Assert.Equal(ratio, Ratio(one, other), .01);

    [Fact]
    public void Dark_is_the_same_chosen_or_by_the_device() =>
        Assert.Equal(Tokens(":root[data-theme=\"dark\"]"), Tokens(":root:not([data-theme])"));

    private static IEnumerable<string> TooWeak(string theme, string pairs, double least)
    {
        var tokens = Tokens(":root");
        foreach (var (name, value) in Tokens($":root[data-theme=\"{theme}\"]"))
        {
            tokens[name] = value;
        }

        return pairs
            .Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)
            .Where(pair => Ratio(tokens[pair.Split('/')[0]], tokens[pair.Split('/')[1]]) < least);
    }

    // Light has no block of its own: it is :root.
    private static Dictionary<string, string> Tokens(string selector)
    {
        var start = Css.IndexOf(selector + " {", StringComparison.Ordinal);
        return start < 0
            ? []
            : Token()
                .Matches(Css[start..Css.IndexOf('}', start)])
                .ToDictionary(match => match.Groups["it"].Value, match => match.Groups["value"].Value);
    }

    private static double Ratio(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + .05) / (Math.Min(a, b) + .05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int at)
        {
            var value = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255d;
            return value <= .04045 ? value / 12.92 : Math.Pow((value + .055) / 1.055, 2.4);
        }

        return (.2126 * Channel(1)) + (.7152 * Channel(3)) + (.0722 * Channel(5));
    }

    [GeneratedRegex("--(?<it>[a-z0-9-]+):\\s*(?<value>#[0-9a-f]{6})", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
