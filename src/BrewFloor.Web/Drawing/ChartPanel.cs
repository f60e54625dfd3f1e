namespace BrewFloor.Web.Drawing;

/// <summary>One plot of a chart: a measure with its readings. Every measure has a plot of its own, there is no second axis.</summary>
/// <param name="Kind">What is measured: colour and stroke of the line.</param>
/// <param name="Title">"Gravity".</param>
/// <param name="Unit">"SG".</param>
/// <param name="Format">How a figure is written: "0.000".</param>
/// <param name="Readings">In any order; doubtful ones are drawn hollow and the line leaves them out.</param>
public sealed record ChartPanel(
    ChartKind Kind,
    string Title,
    string Unit,
    string Format,
    IReadOnlyList<ChartReading> Readings
)
{
    /// <summary>Times without a signal: hatched, and the line is never drawn across.</summary>
    public IReadOnlyList<ChartGap> Gaps { get; init; } = [];

    /// <summary>Horizontal lines with their words: set points, targets, limits.</summary>
    public IReadOnlyList<ChartLevel> Levels { get; init; } = [];

    /// <summary>What is still to come, with how sure it is; in time order.</summary>
    public IReadOnlyList<ChartForecast> Forecast { get; init; } = [];

    /// <summary>One in the last place of the format: closer figures are written alike.</summary>
    public double Finest => Math.Pow(10, Format.IndexOf('.') is >= 0 and var point ? point + 1 - Format.Length : 0);

    /// <summary>Px.</summary>
    public double Height { get; init; } = 220;
}

/// <summary>What a line shows.</summary>
public enum ChartKind
{
    Gravity,
    Temperature,
    Pressure,
}

/// <summary>A reading. A doubtful one says why; it is shown, but the line leaves it out.</summary>
public sealed record ChartReading(DateTimeOffset At, double Value, bool IsDoubtful = false, string? Why = null);

/// <summary>A moment still to come: the likely value, and where it lies four times of five and 19 times of 20.</summary>
public readonly record struct ChartForecast(
    DateTimeOffset At,
    double Likely,
    (double Low, double High) In80,
    (double Low, double High) In95
);

/// <summary>A time without readings that should have been there.</summary>
public readonly record struct ChartGap(DateTimeOffset From, DateTimeOffset Until);

/// <summary>Something that happened, as a thin line through all plots with a letter, explained below.</summary>
public readonly record struct ChartEvent(DateTimeOffset At, string Words);

/// <summary>A horizontal line.</summary>
public readonly record struct ChartLevel(double Value, string Words, ChartLevelKind Kind);

/// <summary>What a horizontal line means.</summary>
public enum ChartLevelKind
{
    SetPoint,
    Target,
    Limit,
}

/// <summary>The words of a chart, in the reader's language.</summary>
/// <param name="Sentence">What the chart shows, in one sentence, for who does not see it.</param>
/// <param name="Read">In the key: what the solid line with dots is.</param>
/// <param name="Now">At the line of now.</param>
/// <param name="NoSignal">In a gap.</param>
/// <param name="Table">Opens the table of the same numbers.</param>
/// <param name="When">Head of the column of times.</param>
/// <param name="Doubtful">Beside a doubtful value in the table.</param>
public sealed record ChartWords(
    string Sentence,
    string Read,
    string Now,
    string NoSignal,
    string Table,
    string When,
    string Doubtful
)
{
    /// <summary>In the key: what the dashed line in its band is.</summary>
    public string Forecast { get; init; } = "";
}
