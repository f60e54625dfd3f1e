using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Web.Drawing;

/// <summary>A tank with its ports where they are and what is on each, numbered as in the list beside it.</summary>
/// <remarks>
/// Places and flanges are true to scale; a port whose height nobody measured stands in the middle of its wall, dashed. Marks keep
/// their size. Ports on the side that faces the reader, or on the back, are seen from their face.
/// </remarks>
public sealed class PortsSketch
{
    // Where the marks and their numbers have room, px.
    private const double Around = 64;
    private const double Neck = 6;
    private const double Reducer = 9;
    private const double BetweenNumbers = 17;

    private readonly TankCanvas _canvas;
    private readonly SvgText _svg = new();
    private readonly List<(int Number, double X, double Y, Edge Edge)> _numbers = [];

    private PortsSketch(TankFigure figure, IReadOnlyList<MountedPort> ports)
    {
        _canvas = new TankCanvas(figure, new DrawingSize(380, 150), Around);
        TankStand.Draw(_svg, _canvas);
        _svg.Path(figure.IsPlastic ? "inside moulded" : "inside", _canvas.Shell());
        TankWall.Draw(_svg, _canvas);
        TankFittings.Top(_svg, _canvas);
        foreach (var group in ports.GroupBy(port => port.Port.Place))
        {
            foreach (var (index, port) in group.Index())
            {
                Draw(port, PortSpot.Of(_canvas, port.Port, index, group.Count()));
            }
        }

        Numbers();
    }

    private enum Edge
    {
        Top,
        Left,
        Right,
    }

    public string Inside => _svg.ToString();

    /// <summary>Px.</summary>
    public double Width => _canvas.Width;

    /// <summary>Px.</summary>
    public double Height => _canvas.Height;

    /// <param name="figure">The tank; what its type usually has on it is left away.</param>
    /// <param name="ports">With what is on them, as far as it is known.</param>
    public static PortsSketch Of(TankFigure figure, IReadOnlyList<MountedPort> ports) =>
        new(figure with { Allowed = null, HasManway = false, HasSprayBall = false, Ports = [] }, ports);

    private void Draw(MountedPort port, PortSpot spot)
    {
        var half = Half(port.Port.Mouth ?? port.Fitting?.Mouth);
        var measured = spot.IsMeasured ? "" : " guessed";
        if (spot.Facing is Facing.Edge)
        {
            Edgewise(port, spot, half, measured);
            return;
        }

        _svg.Circle($"port{(spot.Facing is Facing.Back ? " behind" : " fitted")}{measured}", spot.X, spot.Y, half);
        PartMarks.Face(_svg, spot.X, spot.Y, half, port.Fitting?.Part);
        var edge = spot.X < _canvas.Centre ? Edge.Left : Edge.Right;
        _numbers.Add((port.Port.Number, spot.X + (edge is Edge.Left ? -half : half), spot.Y, edge));
    }

    private void Edgewise(MountedPort port, PortSpot spot, double half, string measured)
    {
        var (frame, s) = (spot.Frame, Neck);
        _svg.Path(
            $"port{(port.Fitting is null ? "" : " fitted")}{measured}",
            $"M{frame.P(0, -half * .6)}L{frame.P(Neck, -half * .6)}M{frame.P(0, half * .6)}L{frame.P(Neck, half * .6)}M{frame.P(Neck, -half)}L{frame.P(Neck, half)}"
        );
        if (port.Fitting is { } on)
        {
            var partHalf = Half(on.Mouth ?? port.Port.Mouth);
            if (on.Through is not null)
            {
                _svg.Path(
                    "part",
                    $"M{frame.P(s, -half)}L{frame.P(s + Reducer, -partHalf)}L{frame.P(s + Reducer, partHalf)}L{frame.P(s, half)}z"
                );
                s += Reducer;
            }

            PartMarks.Draw(_svg, frame, on.Part, s, partHalf, Math.Min(_canvas.HalfWidth * .7, 34));
            s += PartMarks.Reach;
        }

        var (x, y) = frame.At(s + 3);
        _numbers.Add((port.Port.Number, x, y, EdgeOf(frame)));
    }

    private double Half(Mouth? mouth) => Math.Max((mouth?.Flange.Millimeters ?? 50) * _canvas.Scale, 5) / 2;

    private static Edge EdgeOf(Frame frame) =>
        frame.OutY < -.9 ? Edge.Top
        : frame.OutX < 0 ? Edge.Left
        : Edge.Right;

    // Numbers stand along the edges, moved apart as little as needed, each on a thin line to its port.
    private void Numbers()
    {
        foreach (var edge in _numbers.GroupBy(number => number.Edge))
        {
            var isTop = edge.Key is Edge.Top;
            var along = edge.OrderBy(number => isTop ? number.X : number.Y).ToArray();
            var places = Apart(
                [.. along.Select(n => isTop ? n.X : n.Y)],
                BetweenNumbers,
                8,
                (isTop ? Width : Height) - 8
            );
            foreach (var (number, place) in along.Zip(places))
            {
                var (x, y) = (
                    isTop ? place
                    : edge.Key is Edge.Left ? 8
                    : Width - 8,
                    isTop ? 8 : place
                );
                var (toX, toY) = (
                    isTop ? x
                    : edge.Key is Edge.Left ? x + 9
                    : x - 9,
                    isTop ? y + 8 : y
                );
                _svg.Path("tick", $"M{toX} {toY}L{number.X} {number.Y}");
                _svg.Add($"<text class=\"no\" x=\"{Px.Of(x)}\" y=\"{Px.Of(y + 4.5)}\">{number.Number}</text>");
            }
        }
    }

    /// <summary>Rising places at least so far apart, first moved up, then back from the end.</summary>
    internal static double[] Apart(double[] wanted, double gap, double from, double to)
    {
        var places = wanted.Select(place => Math.Max(place, from)).ToArray();
        for (var i = 1; i < places.Length; i++)
        {
            places[i] = Math.Max(places[i], places[i - 1] + gap);
        }

        for (var (i, last) = (places.Length - 1, to); i >= 0; i--, last -= gap)
        {
            places[i] = Math.Min(places[i], last);
        }

        return places;
    }
}

/// <summary>A port and what is on it, as far as anybody knows.</summary>
public sealed record MountedPort(Port Port, Fitting? Fitting);
