namespace BrewFloor.Benchmarks.Drills;

/// <summary>What a drill came to.</summary>
/// <param name="Seed">Of the moments of breaking.</param>
/// <param name="Kills">How often it broke something.</param>
/// <param name="Acknowledged">Entries the writers were told are stored.</param>
/// <param name="Failures">Requests that failed and were sent again, by the way they failed.</param>
/// <param name="Wrong">Answers no writer should get.</param>
/// <param name="Found">The ledger held against the log.</param>
/// <param name="Back">How long it took each time until it served again.</param>
/// <param name="Limit">How long it may take.</param>
/// <param name="MissedByControls">Faults put in on purpose that the reckoning didn't find.</param>
internal sealed record Outcome(
    int Seed,
    int Kills,
    int Acknowledged,
    IReadOnlyDictionary<string, int> Failures,
    IReadOnlyCollection<string> Wrong,
    Reckoning Found,
    IReadOnlyList<TimeSpan> Back,
    TimeSpan Limit,
    IReadOnlyList<string> MissedByControls
) : IDrilled
{
    public IReadOnlyList<string> Also { get; init; } = [];

    public TimeSpan LongestBack => Back.Max();

    public TimeSpan MedianBack => Back.Order().ElementAt(Back.Count / 2);

    public bool IsPassed =>
        Found.IsClean && Wrong.Count == 0 && MissedByControls.Count == 0 && LongestBack <= Limit && Acknowledged > 0;

    public IEnumerable<(string What, string Found)> Rows
    {
        get
        {
            yield return ("kills", DrillReport.Number(Kills));
            yield return ("entries acknowledged", DrillReport.Number(Acknowledged));
            yield return ("requests that failed and were sent again", FailedRequests);
            yield return ("acknowledged and lost", DrillReport.Number(Found.Lost));
            yield return ("acknowledged with another number or time", DrillReport.Number(Found.Differs));
            yield return ("passed over by a reader that remembers the last number", DrillReport.Number(Found.Unseen));
            yield return ("written twice", DrillReport.Number(Found.Twice));
            yield return ("half written", DrillReport.Number(Found.Half));
            yield return ("states that differ from a refold of the log", DrillReport.Number(Found.Unequal));
            yield return ("answers that no writer should get", DrillReport.Number(Wrong.Count));
            yield return (
                "served again after, median and longest",
                $"{DrillReport.Seconds(MedianBack)} and {DrillReport.Seconds(LongestBack)} (at most {DrillReport.Seconds(Limit)})"
            );
            yield return (
                "faults put in on purpose that were not found",
                MissedByControls.Count == 0 ? $"0 of {Controls.Faults}" : string.Join(", ", MissedByControls)
            );
        }
    }

    private string FailedRequests =>
        Failures.Count == 0
            ? "0"
            : string.Join(", ", Failures.OrderBy(f => f.Key).Select(f => $"{DrillReport.Number(f.Value)} ({f.Key})"));
}
