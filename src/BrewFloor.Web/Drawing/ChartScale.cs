namespace BrewFloor.Web.Drawing;

/// <summary>Where a time and a value fall in a plot. The plot is a thousand wide and stretched to the page.</summary>
internal sealed record ChartScale(DateTimeOffset From, DateTimeOffset Until, double Low, double High, double Height)
{
    public const double Width = 1000;

    // Px between two figures at least, so that they can be told apart.
    private const double LeastBetweenTicks = 34;

    public double Step { get; private init; } = 1;

    /// <summary>The scale whose ends are round numbers around all values.</summary>
    /// <param name="finest">The least between two figures that are written differently.</param>
    public static ChartScale Around(
        IEnumerable<double> values,
        DateTimeOffset from,
        DateTimeOffset until,
        double height,
        double finest = 0
    )
    {
        var (low, high) = values
            .DefaultIfEmpty(0)
            .Aggregate(
                (double.MaxValue, double.MinValue),
                (ends, value) => (Math.Min(ends.Item1, value), Math.Max(ends.Item2, value))
            );
        var span = Math.Max(high - low, Math.Max(Math.Abs(high) * .002, 1e-6));
        var step = RoundStep(Math.Max(span * LeastBetweenTicks / height, finest));
        return new ChartScale(
            from,
            until > from ? until : from.AddHours(1),
            Math.Floor((low - (step * .3)) / step) * step,
            Math.Ceiling((high + (step * .3)) / step) * step,
            height
        )
        {
            Step = step,
        };
    }

    public IEnumerable<double> Ticks()
    {
        var count = (int)Math.Round((High - Low) / Step);
        return Enumerable.Range(0, count + 1).Select(i => Low + (i * Step));
    }

    public double X(DateTimeOffset at) => (at - From) / (Until - From) * Width;

    public double Y(double value) => Height - ((value - Low) / (High - Low) * Height);

    /// <summary>For words, which are not stretched.</summary>
    public string PercentOf(DateTimeOffset at) => $"{Px.Of(X(at) / Width * 100)}%";

    // 1, 2 or 5 times a power of ten, not below the given.
    private static double RoundStep(double least)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return (least / power) switch
        {
            <= 1 => power,
            <= 2 => 2 * power,
            <= 5 => 5 * power,
            _ => 10 * power,
        };
    }
}
