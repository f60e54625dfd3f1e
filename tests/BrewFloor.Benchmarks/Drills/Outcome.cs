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
)
{
    /// <summary>What else was looked at, in words.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    public TimeSpan LongestBack => Back.Max();

    public TimeSpan MedianBack => Back.Order().ElementAt(Back.Count / 2);

    public bool IsPassed =>
        Found.IsClean && Wrong.Count == 0 && MissedByControls.Count == 0 && LongestBack <= Limit && Acknowledged > 0;
}
