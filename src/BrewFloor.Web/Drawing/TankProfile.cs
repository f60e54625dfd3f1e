using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>The inside of a tank as a row of radii from the outlet up, mm.</summary>
internal sealed class TankProfile
{
    private readonly List<(double Z, double R)> _points = [];

    private readonly VesselShape _shape;

    public TankProfile(TankFigure figure, int pointsOnACurve)
    {
        _shape = figure.Shape;
        (Radius, Top) = (_shape.Diameter.Millimeters / 2, _shape.Height.Millimeters);
        Shoulder = _shape.BottomHeight.Millimeters;
        Rim = Top - _shape.HeadHeight.Millimeters;
        if (Shoulder > 0)
        {
            AddCurve(0, Shoulder, _shape.Bottom is ConeBottom ? 1 : pointsOnACurve, isRising: false);
        }
        else
        {
            _points.Add((0, Radius - figure.Taper.Millimeters));
        }

        _points.Add((Rim, Radius));
        if (Top > Rim)
        {
            AddCurve(Rim, Top, pointsOnACurve, isRising: true);
        }
    }

    /// <summary>Of the cylinder.</summary>
    public double Radius { get; }

    /// <summary>Where the cylinder starts.</summary>
    public double Shoulder { get; }

    /// <summary>Where the cylinder ends.</summary>
    public double Rim { get; }

    /// <summary>The inside of the head.</summary>
    public double Top { get; }

    public bool HasCone => _shape.Bottom is ConeBottom;

    public double Cylinder => Rim - Shoulder;

    /// <summary>Where the surface of so many litres stands; at the brim when there is more than it holds.</summary>
    public double LevelOf(Volume volume) =>
        volume <= Volume.Zero ? 0
        : volume >= _shape.Total ? Top
        : _shape.LevelOf(volume).Value.Millimeters;

    public double RadiusAt(double z)
    {
        var upper = Math.Clamp(_points.FindIndex(point => point.Z >= z), 1, _points.Count - 1);
        var (below, above) = (_points[upper - 1], _points[upper]);
        return above.Z <= below.Z
            ? above.R
            : below.R + ((above.R - below.R) * Math.Clamp((z - below.Z) / (above.Z - below.Z), 0, 1));
    }

    /// <summary>The radii between two heights, both ends included, from below.</summary>
    public IEnumerable<(double Z, double R)> Between(double from, double to) =>
        [(from, RadiusAt(from)), .. _points.Where(point => point.Z > from && point.Z < to), (to, RadiusAt(to))];

    /// <summary>How high the head is so far from the axis, mm.</summary>
    public double HeadAt(double radius) => Where(Rim, Top, z => RadiusAt(z) > radius);

    /// <summary>How high the bottom is so far from the axis, mm.</summary>
    public double BottomAt(double radius) => Where(0, Shoulder, z => RadiusAt(z) < radius);

    // The height up to which something holds that holds at the lower end.
    private static double Where(double from, double to, Func<double, bool> holds)
    {
        for (var i = 0; i < 30; i++)
        {
            var middle = (from + to) / 2;
            (from, to) = holds(middle) ? (middle, to) : (from, middle);
        }

        return from;
    }

    // Closer together where the wall turns fastest: at the lowest point of a dish, at the top of a dome.
    private void AddCurve(double from, double to, int steps, bool isRising)
    {
        for (var i = isRising ? 1 : 0; i <= steps; i++)
        {
            var turn = Math.PI / 2 * i / steps;
            var share = isRising ? Math.Sin(turn) : 1 - Math.Cos(turn);
            var z = from + ((to - from) * share);
            _points.Add((z, _shape.DiameterAt(Length.FromMillimeters(Math.Min(z, Top))).Value.Millimeters / 2));
        }
    }
}
