using System.Globalization;
using System.Text;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>What full drills came to, as a page of the docs: each drill writes its own part and leaves the others.</summary>
internal static class DrillReport
{
    private const string Head = """
        # Drills

        `./brewfloor drill` breaks things on purpose, in full count, and writes this page; `./brewfloor test` runs the same
        code with a tenth of the counts. Twenty writers log over HTTP meanwhile. They count an entry only when the app has
        acknowledged it, and send what wasn't again under the same id. A reader follows the log by the last number it saw. At
        the end the log is held against all of that, and folded anew.

        """;

    public static void Write(string root, string name, string title, string what, IDrilled outcome, DateOnly day)
    {
        var file = Path.Combine(root, "docs", "operate", "drills.md");
        var parts = (File.Exists(file) ? File.ReadAllText(file) : Head)
            .Split("\n## ")
            .Skip(1)
            .Where(part => !part.StartsWith(title, StringComparison.Ordinal))
            .Append(Part(name, title, what, outcome, day).TrimEnd())
            .Order(StringComparer.Ordinal);
        File.WriteAllText(file, Head + string.Concat(parts.Select(part => $"\n## {part.TrimEnd()}\n")));
    }

    /// <summary>The same, for the console.</summary>
    public static string Text(IDrilled outcome)
    {
        var text = new StringBuilder();
        foreach (var (what, found) in outcome.Rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {what, -58} {found}\n");
        }

        foreach (var wrong in outcome.Wrong.Take(5))
        {
            text.Append(CultureInfo.InvariantCulture, $"  wrong answer: {wrong}\n");
        }

        return text.Append(outcome.IsPassed ? "  passed\n" : "  FAILED\n").ToString();
    }

    private static string Part(string name, string title, string what, IDrilled outcome, DateOnly day)
    {
        var text = new StringBuilder(
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                {title}

                {what} `./brewfloor drill {name}`, {day:d MMMM yyyy}, {Machine.Words}{(
                    outcome.Seed is 0 ? "" : $", seed {outcome.Seed}"
                )}: **{(
                    outcome.IsPassed ? "passed" : "failed"
                )}**.

                | | |
                | --- | --- |

                """
            )
        );
        foreach (var (row, found) in outcome.Rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {row} | {found} |\n");
        }

        foreach (var also in outcome.Also)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{also}\n");
        }

        return text.ToString();
    }

    public static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);

    public static string Seconds(TimeSpan time) =>
        time.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) + " s";
}
