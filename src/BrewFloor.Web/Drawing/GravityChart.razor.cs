using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>Gravity over days, and below it what shares its time axis; drawn on the server, the same in print.</summary>
public sealed partial class GravityChart
{
    private IReadOnlyList<ChartPlot> _plots = [];

    private DateTimeOffset _from;

    private DateTimeOffset _until;

    /// <summary>Top to bottom; each has its own plot.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<ChartPanel> Panels { get; set; } = [];

    [Parameter]
    public IReadOnlyList<ChartEvent> Events { get; set; } = [];

    [Parameter, EditorRequired]
    public DateTimeOffset Now { get; set; }

    /// <summary>The right end; left out: a little beyond now.</summary>
    [Parameter]
    public DateTimeOffset? Until { get; set; }

    /// <summary>Whose days are on the axis.</summary>
    [Parameter, EditorRequired]
    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    /// <summary>Who reads: the decimal mark, the names of days.</summary>
    [Parameter, EditorRequired]
    public CultureInfo Culture { get; set; } = CultureInfo.InvariantCulture;

    [Parameter, EditorRequired]
    public ChartWords Words { get; set; } = null!;

    private IEnumerable<(char Letter, ChartEvent Event)> Lettered =>
        Events.OrderBy(e => e.At).Select((e, i) => ((char)('a' + (i % 26)), e));

    private IEnumerable<ChartReading> Doubts =>
        Panels.SelectMany(panel => panel.Readings).Where(reading => reading.IsDoubtful);

    protected override void OnParametersSet()
    {
        var times = Panels.SelectMany(panel => panel.Readings).Select(r => r.At).Concat(Events.Select(e => e.At));
        _from = times.Append(Now).Min().AddHours(-4);
        var ahead = Panels.SelectMany(panel => panel.Forecast).Select(f => f.At);
        _until = Until ?? ahead.Append(Now + ((Now - _from) * .08)).Max();
        _plots =
        [
            .. Panels.Select(panel => new ChartPlot(
                panel,
                ChartScale.Around(
                    panel
                        .Readings.Select(r => r.Value)
                        .Concat(panel.Levels.Select(l => l.Value))
                        .Concat(panel.Forecast.SelectMany(f => (double[])[f.In95.Low, f.In95.High])),
                    _from,
                    _until,
                    panel.Height,
                    panel.Finest
                )
            )),
        ];
    }

    private static string Name(ChartPlot plot) => plot.Panel.Kind.ToString().ToLowerInvariant();

    private MarkupString InsideOf(ChartPlot plot) => (MarkupString)plot.Inside(Events, Now);

    private IEnumerable<ChartLabel> LabelsOf(ChartPlot plot)
    {
        var scale = plot.Scale;
        if (plot == _plots[0])
        {
            yield return new ChartLabel("before", scale.PercentOf(Now), 10, Words.Now);
            foreach (var (letter, happened) in Lettered)
            {
                yield return new ChartLabel("mid flag", scale.PercentOf(happened.At), 14, letter.ToString());
            }
        }

        foreach (var gap in plot.Panel.Gaps)
        {
            var middle = gap.From + ((gap.Until - gap.From) / 2);
            yield return new ChartLabel("mid no-signal", scale.PercentOf(middle), scale.Height - 14, Words.NoSignal);
        }

        foreach (var level in plot.Panel.Levels)
        {
            // On the side where the readings should not be: above a limit, below a target.
            var (look, aside) = level.Kind is ChartLevelKind.Limit ? ("end limit", -10) : ("end", 10);
            yield return new ChartLabel(look, "100%", scale.Y(level.Value) + aside, level.Words);
        }

        foreach (var reading in plot.Panel.Readings.Where(r => r.IsDoubtful))
        {
            yield return new ChartLabel("mid doubt", scale.PercentOf(reading.At), scale.Y(reading.Value) - 16, "?");
        }
    }

    // Ticks stand at midnight, days are named at noon; as many names as fit a phone.
    private List<DateTimeOffset> Midnights()
    {
        var midnights = new List<DateTimeOffset>();
        for (var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(_from, Zone).DateTime); ; day = day.AddDays(1))
        {
            var local = day.ToDateTime(TimeOnly.MinValue);
            var midnight = new DateTimeOffset(local, Zone.GetUtcOffset(local));
            if (midnight > _until)
            {
                return midnights;
            }

            midnights.Add(midnight);
        }
    }

    private string DayTicks()
    {
        var scale = _plots.Count > 0 ? _plots[0].Scale : ChartScale.Around([], _from, _until, 1);
        var ticks = Midnights().Where(at => at >= _from).Select(at => $"M{Px.Of(scale.X(at))} 1v10");
        return $"M0 1H1000{string.Concat(ticks)}";
    }

    private IEnumerable<(string At, string Day)> DayNames()
    {
        const int Most = 7;
        var midnights = Midnights();
        var every = Math.Max(1, (int)Math.Ceiling(midnights.Count / (double)Most));
        return _plots.Count == 0
            ? []
            : midnights
                .Where((_, i) => i % every == 0)
                .Select(midnight => midnight.AddHours(12))
                .Where(noon => noon >= _from && noon <= _until)
                .Select(noon => (_plots[0].Scale.PercentOf(noon), DayOf(noon)));
    }

    private string DayOf(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, Zone).ToString("ddd d", Culture);

    private string When(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, Zone).ToString("ddd d MMM, HH:mm", Culture);

    private sealed record ChartLabel(string Look, string X, double Y, string Words);
}
