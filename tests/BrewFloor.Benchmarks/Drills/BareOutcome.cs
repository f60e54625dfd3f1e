using System.Globalization;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>What the commands of the README came to on a bare machine.</summary>
/// <param name="First">How long until the demo's first page was there, with everything to install and to build.</param>
/// <param name="Second">The same, started once more.</param>
/// <param name="Test">How long everything that is checked took.</param>
/// <param name="Tally">The last line of the test command.</param>
/// <param name="Wrong">What did not come about.</param>
internal sealed record BareOutcome(
    TimeSpan? First,
    TimeSpan? Second,
    TimeSpan? Test,
    string Tally,
    IReadOnlyCollection<string> Wrong
) : IDrilled
{
    private const string Mark = "bare: ";

    public bool IsPassed => Wrong.Count is 0 && this is { First: not null, Second: not null, Test: not null };

    public int Seed => 0;

    public IReadOnlyList<string> Also => [];

    public IEnumerable<(string What, string Found)> Rows =>
        [
            ("`./brewfloor start --demo`, until a browser is shown a page", Took(First)),
            ("the same once more", Took(Second)),
            ("`./brewfloor test`", $"{Took(Test)}: {Tally}"),
        ];

    /// <param name="lines">All that the script said.</param>
    public static BareOutcome Read(IReadOnlyList<string> lines)
    {
        var counted = lines
            .Where(line => line.StartsWith(Mark, StringComparison.Ordinal))
            .Select(line => line[Mark.Length..].Split(' ', 4))
            .ToArray();
        var test = Array.Find(counted, line => line[0] is "test");
        string[] wrong =
        [
            .. counted
                .Where(line => line[0] is not "test" && Seconds(line) is null)
                .Select(line => string.Join(' ', line)),
            .. test is [_, _, not "0", ..] ? [$"the test command ended with {test[2]}"] : Array.Empty<string>(),
        ];
        return new(Of("first"), Of("second"), Of("test"), test is [_, _, _, var tally] ? tally : "did not end", wrong);

        TimeSpan? Of(string name) =>
            Array.Find(counted, line => string.Equals(line[0], name, StringComparison.Ordinal)) is { } line
                ? Seconds(line)
                : null;
    }

    private static TimeSpan? Seconds(string[] line) =>
        int.TryParse(line[1], NumberStyles.None, CultureInfo.InvariantCulture, out var seconds)
            ? TimeSpan.FromSeconds(seconds)
            : null;

    private static string Took(TimeSpan? time) =>
        time is { } known
            ? string.Create(CultureInfo.InvariantCulture, $"{(int)known.TotalMinutes} min {known.Seconds} s")
            : "did not come about";
}
