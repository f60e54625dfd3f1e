using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Calculators;

/// <summary>One result over one input, with the person's own point on it; the same in print and as a table.</summary>
public sealed partial class CurveChart(Wording wording)
{
    private const double Height = 200;

    private const double WidthOnAPhone = 300; // px, for how many figures fit below

    private const int EveryNth = 6; // of the points, in the table

    private PlotPoint[] _points = [];

    private ChartScale _over = null!;

    private ChartScale _of = null!;

    [Parameter, EditorRequired]
    public required Asked Asked { get; set; }

    private Plot Plot => Asked.Calculator.Plot!;

    private string OverName => wording.Calculator("input." + Plot.Over);

    private string OfName => wording.Calculator("result." + Plot.Of);

    private MeasureUnit OverUnit { get; set; } = null!;

    private MeasureUnit OfUnit { get; set; } = null!;

    private IEnumerable<PlotPoint> Told => _points.Where((_, i) => i % EveryNth == 0);

    private IEnumerable<(double Y, string Figure)> Rows => _of.Ticks().Select(tick => (_of.Y(tick), Text(tick, _of)));

    private string RowTicks => string.Concat(_of.Ticks().Select(tick => $"M14 {Px.Of(_of.Y(tick))}h-9"));

    private IEnumerable<(double X, string Figure)> Columns => OverTicks.Select(tick => (X(tick), Text(tick, _over)));

    // The curve reaches from edge to edge, so its ends need not be round.
    private IEnumerable<double> OverTicks
    {
        get
        {
            var first = Math.Ceiling((_over.Low / _over.Step) - 1e-9);
            var last = Math.Floor((_over.High / _over.Step) + 1e-9);
            return Enumerable.Range(0, (int)(last - first) + 1).Select(i => (first + i) * _over.Step);
        }
    }

    private string ColumnTicks => "M0 1H1000" + string.Concat(OverTicks.Select(tick => $"M{Px.Of(X(tick))} 1v10"));

    private (double X, double Y)? Yours
    {
        get
        {
            if (Asked.Answer!.Find(Plot.Of) is not { } of)
            {
                return null;
            }

            var over = Asked.Given.Figure(Plot.Over);
            var (x, y) = (X(over.In(OverUnit)), _of.Y(of.Value.In(OfUnit)));
            return x is >= 0 and <= ChartScale.Width && y is >= 0 and <= Height ? (x, y) : null;
        }
    }

    private MarkupString Inside
    {
        get
        {
            var svg = new SvgText();
            foreach (var tick in _of.Ticks())
            {
                svg.Path("grid", $"M0 {_of.Y(tick)}H{ChartScale.Width}");
            }

            var line = string.Join(
                'L',
                _points.Select(p => $"{Px.Of(X(p.Over.In(OverUnit)))} {Px.Of(_of.Y(p.Of.In(OfUnit)))}")
            );
            svg.Path("line gravity", $"M{line}");
            if (Yours is { } yours)
            {
                svg.Path("event", $"M{yours.X} 0V{Height}");
                svg.Path("dot gravity", $"M{yours.X} {yours.Y}h0");
            }

            return (MarkupString)svg.ToString();
        }
    }

    protected override void OnParametersSet()
    {
        _points = Asked.Answer is null ? [] : [.. Asked.Calculator.Curve(Asked.Given)];
        if (_points.Length < 2)
        {
            _points = [];
            return;
        }

        var units = wording.Figures.Units;
        (OverUnit, OfUnit) = (FigureWords.OwnOf(_points[0].Over.Measure, units), FigureWords.UnitOf(Largest(), units));
        double[] over = [.. _points.Select(p => p.Over.In(OverUnit))];
        double[] of = [.. _points.Select(p => p.Of.In(OfUnit))];
        _over = Around(over, WidthOnAPhone) with { Low = over.Min(), High = over.Max() };
        _of = Around(of, Height);
        _of = of.Min() >= 0 ? _of with { Low = Math.Max(0, _of.Low) } : _of;
    }

    private Figure Largest() => _points.Select(p => p.Of).MaxBy(figure => Math.Abs(figure.Value));

    // Only the values of a scale are used here: its ends are round numbers around them.
    private static ChartScale Around(IEnumerable<double> values, double pixels) =>
        ChartScale.Around(values, DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch.AddHours(1), pixels);

    private double X(double value) => (value - _over.Low) / (_over.High - _over.Low) * ChartScale.Width;

    private string Text(double tick, ChartScale scale)
    {
        var places = Math.Clamp(-(int)Math.Floor(Math.Log10(scale.Step) + 1e-9), 0, 6);
        return Math.Round(tick, places + 1).ToString("F" + places, wording.Figures.Culture);
    }
}
