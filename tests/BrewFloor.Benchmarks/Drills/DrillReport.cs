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

    public static void Write(string root, string name, string title, string what, Outcome outcome, DateOnly day)
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
    public static string Text(Outcome outcome)
    {
        var text = new StringBuilder();
        foreach (var (what, found) in Rows(outcome))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {what, -58} {found}\n");
        }

        foreach (var wrong in outcome.Wrong.Take(5))
        {
            text.Append(CultureInfo.InvariantCulture, $"  wrong answer: {wrong}\n");
        }

        return text.Append(outcome.IsPassed ? "  passed\n" : "  FAILED\n").ToString();
    }

    private static string Part(string name, string title, string what, Outcome outcome, DateOnly day)
    {
        var text = new StringBuilder(
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                {title}

                {what} `./brewfloor drill {name}`, {day:d MMMM yyyy}, {Machine.Words}, seed {outcome.Seed}: **{(
                    outcome.IsPassed ? "passed" : "failed"
                )}**.

                | | |
                | --- | --- |

                """
            )
        );
        foreach (var (row, found) in Rows(outcome))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {row} | {found} |\n");
        }

        foreach (var also in outcome.Also)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{also}\n");
        }

        return text.ToString();
    }

    private static IEnumerable<(string What, string Found)> Rows(Outcome outcome)
    {
        var found = outcome.Found;
        yield return ("kills", Number(outcome.Kills));
        yield return ("entries acknowledged", Number(outcome.Acknowledged));
        yield return ("requests that failed and were sent again", Failures(outcome));
        yield return ("acknowledged and lost", Number(found.Lost));
        yield return ("acknowledged with another number or time", Number(found.Differs));
        yield return ("passed over by a reader that remembers the last number", Number(found.Unseen));
        yield return ("written twice", Number(found.Twice));
        yield return ("half written", Number(found.Half));
        yield return ("states that differ from a refold of the log", Number(found.Unequal));
        yield return ("answers that no writer should get", Number(outcome.Wrong.Count));
        yield return (
            "served again after, median and longest",
            $"{Seconds(outcome.MedianBack)} and {Seconds(outcome.LongestBack)} (at most {Seconds(outcome.Limit)})"
        );
        yield return (
            "faults put in on purpose that were not found",
            outcome.MissedByControls.Count == 0
                ? $"0 of {Controls.Faults}"
                : string.Join(", ", outcome.MissedByControls)
        );
    }

    private static string Failures(Outcome outcome) =>
        outcome.Failures.Count == 0
            ? "0"
            : string.Join(", ", outcome.Failures.OrderBy(f => f.Key).Select(f => $"{Number(f.Value)} ({f.Key})"));

    private static string Number(int number) => number.ToString("N0", CultureInfo.InvariantCulture);

    private static string Seconds(TimeSpan time) =>
        time.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) + " s";
}
