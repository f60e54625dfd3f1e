using System.Text.RegularExpressions;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>What may be allowed beforehand, against what the guards say in the source.</summary>
public partial class StopsTests
{
    private static readonly string[] Guards = [.. Tree.FilesIn("src/BrewFloor.Domain/", ".cs").Select(Tree.Read)];

    [Fact]
    public void Every_stop_and_nothing_else_may_be_allowed_beforehand() =>
        Assert.Equal(Stops.CanBeAllowed.Order(), Codes("Stop", Guards).Distinct().Order());

    [Fact]
    public void No_stop_is_a_hard_stop_elsewhere() =>
        Assert.Empty(Codes("HardStop", Guards).Intersect(Stops.CanBeAllowed));

    [Fact]
    public void The_reading_of_the_source_can_fail() =>
        Assert.Equal(
            ["parts-off", "not-clean"],
            Codes(
                "Stop",
                [
                    "Objection.Stop(\n \"parts-off\", ...); Objection.HardStop(\"vent-closed\"); Objection.Stop(NotClean)",
                    "private const string NotClean = \"not-clean\";",
                ]
            )
        );

    private static IEnumerable<string> Codes(string level, string[] sources)
    {
        var all = string.Join('\n', sources);
        var names = Constants().Matches(all).ToLookup(m => m.Groups["name"].Value, m => m.Groups["code"].Value);
        foreach (
            Match match in Calls()
                .Matches(all)
                .Where(m => level.Equals(m.Groups["level"].Value, StringComparison.Ordinal))
        )
        {
            yield return match.Groups["code"].Success
                ? match.Groups["code"].Value
                : names[match.Groups["name"].Value].First();
        }

        if (level is "Stop")
        {
            foreach (Match match in AtALevelGiven().Matches(all))
            {
                yield return match.Groups["code"].Value;
            }
        }
    }

    [GeneratedRegex(
        """Objection\.(?<level>Stop|HardStop)\(\s*("(?<code>[a-z0-9-]+)"|(?<name>\w+))""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Calls();

    /// <summary>A caution here and a stop there: the level is handed in.</summary>
    [GeneratedRegex("""new\(\s*"(?<code>[a-z0-9-]+)",\s*level,""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AtALevelGiven();

    [GeneratedRegex("""const string (?<name>\w+) = "(?<code>[a-z0-9-]+)";""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Constants();
}
