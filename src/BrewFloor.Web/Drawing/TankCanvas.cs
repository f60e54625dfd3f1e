using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>One drawing's paper: where millimetres of the tank fall in px, and room for what is measured in px.</summary>
internal sealed class TankCanvas
{
    private const double SmallFittings = .62;

    private readonly double _room;

    /// <param name="figure">The tank.</param>
    /// <param name="size">How large.</param>
    /// <param name="around">Px left free all around it for what is mounted; 0: what the tank itself needs.</param>
    public TankCanvas(TankFigure figure, DrawingSize size, double around = 0)
    {
        Figure = figure;
        IsLarge = size.IsLarge;
        Profile = new TankProfile(figure, IsLarge ? 14 : 5);
        Fitting = IsLarge ? 1 : SmallFittings;
        _room = around > 0 ? around : RoomAbove();
        var legs = figure.Legs.Millimeters;
        var foot =
            around > 0 && legs <= 0 ? around * .6
            : IsLarge ? 3
            : 2;
        Scale = Math.Min((size.Height - _room - foot) / (Profile.Top + legs), size.WidestBody / (2 * Profile.Radius));
        HalfWidth = Profile.Radius * Scale;
        Centre = HalfWidth + (around > 0 ? around : RoomBefore());
        Width =
            Centre
            + HalfWidth
            + (
                around > 0 ? around
                : IsLarge ? 23
                : 11
            );
        Height = ((Profile.Top + legs) * Scale) + _room + foot;
    }

    public TankFigure Figure { get; }

    public TankProfile Profile { get; }

    public bool IsLarge { get; }

    /// <summary>Factor for what is drawn at a fixed size: gauge, valves, lid.</summary>
    public double Fitting { get; }

    /// <summary>Px per mm.</summary>
    public double Scale { get; }

    public double Width { get; }

    public double Height { get; }

    public double Centre { get; }

    /// <summary>Half the cylinder, px.</summary>
    public double HalfWidth { get; }

    public double Left => Centre - HalfWidth;

    public double Right => Centre + HalfWidth;

    public double Floor => Y(-Figure.Legs.Millimeters);

    /// <summary>Where what is mounted on top begins.</summary>
    public double TopEdge => Y(Profile.Top) - (Figure.Top is DrawnTop.Lid ? 5 * Fitting : 0);

    public double Y(double z) => _room + ((Profile.Top - z) * Scale);

    public double YOf(Volume volume) => Y(Profile.LevelOf(volume));

    public double X(double r) => Centre + (r * Scale);

    /// <summary>The inside between two heights as a closed path: no clipping, so no ids that could meet on one page.</summary>
    public PathData Slice(double from, double to)
    {
        var wall = Profile.Between(from, to).ToList();
        var left = string.Concat(
            Enumerable.Reverse(wall).Select((p, i) => $"{(i == 0 ? "M" : "L")}{Px.Of(X(-p.R))} {Px.Of(Y(p.Z))}")
        );
        return $"{left}{string.Concat(wall.Select(p => $"L{Px.Of(X(p.R))} {Px.Of(Y(p.Z))}"))}z";
    }

    /// <summary>All of the inside.</summary>
    public PathData Shell() => Slice(0, Profile.Top);

    private double RoomAbove() =>
        new[]
        {
            7 * Fitting,
            Figure.HasManway ? 14 * Fitting : 0,
            Figure.Vent is DrawnVent.None ? 0 : 26 * Fitting,
            Figure.Top is DrawnTop.ScrewCap ? 34 * Fitting : 0,
            GaugeRoom(),
        }.Max();

    private double GaugeRoom() =>
        Figure.Allowed is null ? 0
        : IsLarge ? 50
        : 23;

    private double RoomBefore() =>
        IsLarge ? 44 : 5 + (Figure.Jacket is null ? 0 : 4) + (Figure.Vent is DrawnVent.Hose ? 5 : 0);
}
