using System.Text;

namespace BrewFloor.Brewing.Tests;

/// <summary>How much stands in print, by subject, and the page of all checks.</summary>
internal static class Counts
{
    private const int MostOfATable = 15;

    public static IReadOnlyList<string> Provenances { get; } =
    ["published", "computed-independently", "common-practice", "from-memory"];

    /// <summary>The first two letters of a check: its subject, and where no more was found in print.</summary>
    public static IReadOnlyDictionary<string, string> Subjects { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["EX"] = "Extract and alcohol; nothing more in print at hand",
            ["CO"] = "Carbonation; no print of beer above 8 °C",
            ["KI"] = "Fermentation and creep; no open data set was seen as a table",
            ["YE"] = "Yeast; storage: three points of one strain",
            ["GE"] = "Tanks; dishes and flanges only computed or from memory",
            ["CI"] = "Cleaning and hazards; concentrations and times are practice",
            ["OX"] = "Oxygen; targets are practice",
            ["HE"] = "Heat; heat of fermentation and U are practice",
            ["VO"] = "Volumes and units",
            ["TR"] = "Transfers; only computed",
            ["TT"] = "Monthly report",
            ["PA"] = "Passivation; treatments but for their strength from memory",
            ["DH"] = "Dry hops; no primary source for the loss",
            ["RO"] = "Room air; only computed (its limits stand under cleaning)",
        };

    /// <summary>Values from print; a source with a long table counts for fifteen at most.</summary>
    public static int Published(IEnumerable<Check> checks) =>
        checks
            .Where(c => Is(c, "published"))
            .GroupBy(c => c.Source)
            .Sum(table => Math.Min(MostOfATable, table.Sum(c => c.Values)));

    /// <summary>Values by subject and provenance, as a Markdown table.</summary>
    public static string Table(IEnumerable<Check> checks)
    {
        var text = new StringBuilder(
            $"| | {string.Join(" | ", Provenances)} | |\n| --- | --: | --: | --: | --: | --- |\n"
        );
        var of = checks.ToLookup(c => c.Id[..2]);
        foreach (var (prefix, subject) in Subjects)
        {
            var values = Provenances.Select(p => of[prefix].Where(c => Is(c, p)).Sum(c => c.Values));
            _ = text.Append(null, $"| {prefix} | {string.Join(" | ", values)} | {subject} |\n");
        }

        return text.ToString();
    }

    public static string Page(IReadOnlyList<Check> checks)
    {
        var text = new StringBuilder(
            $"""
            # What the numbers are checked against

            Each row is compared by a test with what the floor computes, within the tolerance beside it. "Published" was
            read in the source named; "computed-independently" was worked out by another way or another program;
            "common-practice" has no source; "from-memory" was seen nowhere and wants one. Besides these rows the tests hold
            three tables ([where they come from](../../tests/BrewFloor.Brewing.Tests/samples/README.md)) and the laws:
            inverses, what rises with what, what is kept.

            {Published(checks)} published values, a source counting for {MostOfATable} at most. Values by subject:

            {Table(checks)}
            <!-- Made from the checks (tests/BrewFloor.Brewing.Tests/Counts.cs): change them, not this. -->

            """
        );
        foreach (var (prefix, subject) in Subjects)
        {
            _ = text.Append(
                    null,
                    $"\n## {subject.Split(';')[0]}\n\n| | given | expected | within | source | provenance |\n"
                )
                .Append("| --- | --- | --- | --- | --- | --- |\n")
                .AppendJoin("", checks.Where(c => c.Id.StartsWith(prefix, StringComparison.Ordinal)).Select(Row));
        }

        return text.ToString();
    }

    private static bool Is(Check check, string provenance) =>
        check.Provenance.Equals(provenance, StringComparison.Ordinal);

    private static string Row(Check check) =>
        $"| {check.Id} | {Cell(check.Input)} | {Cell(check.Expected)} | {Cell(check.Tolerance)} | {Cell(check.Source)} | {check.Provenance} |\n";

    private static string Cell(string text) =>
        text.Replace("+-", "±", StringComparison.Ordinal)
            .Replace("|", "\\|", StringComparison.Ordinal)
            .Replace("*", "\\*", StringComparison.Ordinal)
            .Replace("_", "\\_", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal);
}
