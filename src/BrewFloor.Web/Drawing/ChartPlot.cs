using System.Globalization;

namespace BrewFloor.Web.Drawing;

/// <summary>The stretched part of one plot, and the words over it.</summary>
internal sealed class ChartPlot(ChartPanel panel, ChartScale scale)
{
    // A sensor's readings would be a thick rope: beyond this the line alone, and dots only where there is no line.
    private const int MostDots = 60;

    public ChartPanel Panel => panel;

    public ChartScale Scale => scale;

    private string Kind => panel.Kind.ToString().ToLowerInvariant();

    public IEnumerable<(double Y, string Words)> Figures(CultureInfo culture) =>
        scale.Ticks().Select(tick => (scale.Y(tick), tick.ToString(panel.Format, culture)));

    /// <summary>Long ticks with figures, short ticks between.</summary>
    public string RulerTicks()
    {
        var ticks = scale.Ticks().ToList();
        var minor = ticks.Skip(1).SelectMany(tick => Enumerable.Range(1, 4).Select(i => tick - (scale.Step * i / 5)));
        return string.Concat(ticks.Select(tick => $"M14 {Px.Of(scale.Y(tick))}h-9"))
            + string.Concat(minor.Select(tick => $"M14 {Px.Of(scale.Y(tick))}h-4"));
    }

    public string Inside(IReadOnlyList<ChartEvent> events, DateTimeOffset now)
    {
        var svg = new SvgText();
        foreach (var gap in panel.Gaps)
        {
            svg.Path("gap", $"M{scale.X(gap.From)} 0H{scale.X(gap.Until)}V{scale.Height}H{scale.X(gap.From)}z");
        }

        foreach (var tick in scale.Ticks())
        {
            svg.Path("grid", $"M0 {scale.Y(tick)}H{ChartScale.Width}");
        }

        Bands(svg);
        foreach (var level in panel.Levels)
        {
            var look = level.Kind.ToString().ToLowerInvariant();
            svg.Path($"level-{look}", $"M0 {scale.Y(level.Value)}H{ChartScale.Width}");
        }

        foreach (var happened in events)
        {
            svg.Path("event", $"M{scale.X(happened.At)} 0V{scale.Height}");
        }

        svg.Path("now", $"M{scale.X(now)} 0V{scale.Height}");
        Line(svg);
        Dots(svg);
        return svg.ToString();
    }

    /// <summary>The trusted readings in runs: a run ends where a gap lies between two readings.</summary>
    public IReadOnlyList<IReadOnlyList<ChartReading>> Runs()
    {
        var runs = new List<IReadOnlyList<ChartReading>>();
        var run = new List<ChartReading>();
        foreach (var reading in panel.Readings.Where(r => !r.IsDoubtful).OrderBy(r => r.At))
        {
            if (run.Count > 0 && panel.Gaps.Any(gap => gap.From < reading.At && gap.Until > run[^1].At))
            {
                runs.Add(run);
                run = [];
            }

            run.Add(reading);
        }

        return run.Count > 0 ? [.. runs, run] : runs;
    }

    // The wide band first, the narrow one on it, the likely course on both.
    private void Bands(SvgText svg)
    {
        if (panel.Forecast.Count < 2)
        {
            return;
        }

        svg.Path("band95", $"M{Band(f => f.In95)}z");
        svg.Path("band80", $"M{Band(f => f.In80)}z");
        svg.Path("forecast", $"M{Course(panel.Forecast, f => f.Likely)}");
    }

    private string Band(Func<ChartForecast, (double Low, double High)> of) =>
        $"{Course(panel.Forecast, f => of(f).High)}L{Course(panel.Forecast.Reverse(), f => of(f).Low)}";

    private string Course(IEnumerable<ChartForecast> forecast, Func<ChartForecast, double> of) =>
        string.Join('L', forecast.Select(f => $"{Px.Of(scale.X(f.At))} {Px.Of(scale.Y(of(f)))}"));

    private void Line(SvgText svg)
    {
        foreach (var run in Runs().Where(run => run.Count > 1))
        {
            var points = string.Join('L', run.Select(r => $"{Px.Of(scale.X(r.At))} {Px.Of(scale.Y(r.Value))}"));
            svg.Path($"line {Kind}", $"M{points}");
        }
    }

    // A stroke without length and with a round cap stays a disc however the plot is stretched.
    private void Dots(SvgText svg)
    {
        var alone = Runs().Where(run => run.Count == 1).SelectMany(run => run);
        var doubtful = panel.Readings.Where(reading => reading.IsDoubtful);
        var dots = string.Concat(
            (panel.Readings.Count > MostDots ? alone.Concat(doubtful) : panel.Readings).Select(Dot)
        );
        var holes = string.Concat(doubtful.Select(Dot));
        svg.Path($"dot {Kind}", $"{dots}");
        if (holes.Length > 0)
        {
            svg.Path("dot-in", $"{holes}");
        }
    }

    private string Dot(ChartReading reading) => $"M{Px.Of(scale.X(reading.At))} {Px.Of(scale.Y(reading.Value))}h0";
}
