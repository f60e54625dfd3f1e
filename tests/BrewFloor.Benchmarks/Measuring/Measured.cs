namespace BrewFloor.Benchmarks.Measuring;

/// <summary>One figure with what it should be at most.</summary>
/// <param name="What">What was measured.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Limit">At most, in the same unit.</param>
/// <param name="Unit">"x" for a ratio, "ms", "s", "MB".</param>
internal sealed record Measured(string What, double Value, double Limit, string Unit)
{
    public double? BaselineMs { get; init; }

    public double? SubjectMs { get; init; }

    public bool IsMet => Value <= Limit;

    public static Measured Ratio(string what, Round round, double limit) =>
        new(what, round.Ratio, limit, "x") { BaselineMs = round.BaselineMs, SubjectMs = round.SubjectMs };
}
