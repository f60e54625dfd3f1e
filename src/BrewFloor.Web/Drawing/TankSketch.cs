using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>A tank, drawn: sizes and condition in, SVG out. The same on floor, page and label.</summary>
/// <remarks>
/// Outline, level, sediment and ports are true to the measured sizes; strokes, textures and fittings keep their size at
/// every scale. What tells states apart is shape first: textures from <c>DrawingDefs</c>, once on every page.
/// </remarks>
public sealed class TankSketch
{
    private readonly TankCanvas _canvas;

    private readonly TankCondition _condition;

    private TankSketch(TankCanvas canvas, TankCondition condition, string markup)
    {
        (_canvas, _condition, Inside) = (canvas, condition, markup);
    }

    /// <summary>What stands between the <c>svg</c> tags.</summary>
    public string Inside { get; }

    /// <summary>Px.</summary>
    public double Width => _canvas.Width;

    /// <summary>Px.</summary>
    public double Height => _canvas.Height;

    /// <summary>Px per mm of the tank.</summary>
    public double Scale => _canvas.Scale;

    internal bool IsLarge => _canvas.IsLarge;

    internal TankFigure Figure => _canvas.Figure;

    /// <summary>The tank with all that its condition shows.</summary>
    public static TankSketch Of(TankFigure figure, TankCondition condition, DrawingSize size)
    {
        var (canvas, svg) = (new TankCanvas(figure, size), new SvgText());
        TankStand.Draw(svg, canvas);
        TankInside.Draw(svg, canvas, condition);
        TankWall.Draw(svg, canvas);
        TankFittings.Draw(svg, canvas);
        TankGauge.Draw(svg, canvas, condition);
        if (canvas.IsLarge)
        {
            LitreScale.Draw(svg, canvas);
        }

        TankInside.DrawOver(svg, canvas, condition);
        return new TankSketch(canvas, condition, svg.ToString());
    }

    /// <summary>The silhouette alone, for labels: nothing on it will ever change.</summary>
    public static TankSketch OutlineOf(TankFigure figure, DrawingSize size)
    {
        var (canvas, svg) = (new TankCanvas(figure, size), new SvgText());
        TankStand.Draw(svg, canvas);
        svg.Path("outline", canvas.Shell());
        TankFittings.Draw(svg, canvas);
        return new TankSketch(canvas, new TankCondition(), svg.ToString());
    }

    /// <summary>Where in the drawing something is measured, px.</summary>
    public (double X, double Y) PlaceOf(ReadOutPlace place)
    {
        var profile = _canvas.Profile;
        var level = _condition.IsVolumeUnknown
            ? profile.Shoulder + (profile.Cylinder / 2)
            : profile.LevelOf(_condition.Volume);
        var bed = profile.LevelOf(Volume.FromLiters(_condition.Sediment.Sum(layer => layer.Volume.Liters)));
        return place switch
        {
            ReadOutPlace.Gauge => (_canvas.Centre + TankGauge.Radius(_canvas), TankGauge.CentreY(_canvas)),
            ReadOutPlace.Headspace => (_canvas.X(profile.Radius * .6), _canvas.Y((level + profile.Top) / 2)),
            ReadOutPlace.Level => (_canvas.X(profile.RadiusAt(level) * .8), _canvas.Y(level)),
            ReadOutPlace.Beer => (_canvas.X(profile.Radius * .5), _canvas.Y(bed + ((level - bed) * .66))),
            ReadOutPlace.Thermowell => (_canvas.X(profile.Radius * .55), _canvas.Y(bed + ((level - bed) * .4))),
            _ => (_canvas.X(profile.RadiusAt(bed / 2) * .3), _canvas.Y(bed * .6)),
        };
    }
}

/// <summary>Where a number is measured, from top to bottom.</summary>
public enum ReadOutPlace
{
    Gauge,
    Headspace,
    Level,
    Beer,
    Thermowell,
    Sediment,
}
