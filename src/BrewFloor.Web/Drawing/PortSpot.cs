using BrewFloor.Domain.Tanks;

namespace BrewFloor.Web.Drawing;

/// <summary>How a port is seen in a drawing from the front.</summary>
internal enum Facing
{
    Edge, // at the outline, from its side
    Front,
    Back,
}

/// <summary>Where in the drawing a port is.</summary>
/// <param name="Frame">Its place on the wall and the way out, px.</param>
/// <param name="Facing">From its side or its face.</param>
/// <param name="IsMeasured">Its height, or its place on the lid, was written down.</param>
internal readonly record struct PortSpot(Frame Frame, Facing Facing, bool IsMeasured)
{
    // Within about 45 degrees of the outline it is drawn at it.
    private const double AtEdge = .7;

    public double X => Frame.X;

    public double Y => Frame.Y;

    /// <param name="canvas">The drawing.</param>
    /// <param name="port">The port.</param>
    /// <param name="index">Which of those in the same wall.</param>
    /// <param name="count">How many are in the same wall: those nobody measured are spread over it.</param>
    public static PortSpot Of(TankCanvas canvas, Port port, int index, int count) =>
        port.Place switch
        {
            PortPlace.Lid => OnTop(canvas, port, index, count),
            PortPlace.Bottom => Below(canvas, port, index, count),
            _ => InWall(canvas, port, index, count),
        };

    private static PortSpot OnTop(TankCanvas canvas, Port port, int index, int count)
    {
        var (profile, x) = (canvas.Profile, Across(canvas, port, index, count));
        var reach = port.FromMiddle?.Millimeters ?? Math.Abs(x);
        var y = profile.Top > profile.Rim ? canvas.Y(profile.HeadAt(reach)) : canvas.TopEdge;
        return new(new(canvas.X(x), y, 0, -1), Facing.Edge, port.FromMiddle is not null);
    }

    private static PortSpot Below(TankCanvas canvas, Port port, int index, int count)
    {
        var isAlone = count == 1 && port.FromMiddle is null;
        var x = isAlone ? 0 : Across(canvas, port, index, count) * (port.FromMiddle is null ? .3 : 1);
        var z = canvas.Profile.Shoulder > 0 ? canvas.Profile.BottomAt(port.FromMiddle?.Millimeters ?? Math.Abs(x)) : 0;
        return new(new(canvas.X(x), canvas.Y(z), 0, 1), Facing.Edge, isAlone || port.FromMiddle is not null);
    }

    private static PortSpot InWall(TankCanvas canvas, Port port, int index, int count)
    {
        var profile = canvas.Profile;
        var share = (index + 1.0) / (count + 1);
        var z =
            port.Height?.Millimeters
            ?? (
                port.Place is PortPlace.Cone ? profile.Shoulder * share : profile.Shoulder + (profile.Cylinder * share)
            );
        var around = (port.Around?.Degrees ?? 90) * Math.PI / 180;
        var (right, front, radius) = (Math.Sin(around), Math.Cos(around), profile.RadiusAt(z));
        var isMeasured = port.Height is not null;
        if (Math.Abs(right) < AtEdge)
        {
            var facing = front > 0 ? Facing.Front : Facing.Back;
            return new(new(canvas.X(radius * right), canvas.Y(z), 0, 0), facing, isMeasured);
        }

        // Square to the wall: in the cone outwards and down.
        var side = Math.Sign(right);
        var lean =
            z < profile.Shoulder && profile.HasCone
                ? Math.Atan2(profile.Radius - profile.RadiusAt(0), profile.Shoulder)
                : 0;
        return new(
            new(canvas.X(radius * side), canvas.Y(z), side * Math.Cos(lean), Math.Sin(lean)),
            Facing.Edge,
            isMeasured
        );
    }

    // Mm from the axis, to the right.
    private static double Across(TankCanvas canvas, Port port, int index, int count) =>
        port.FromMiddle is { } from
            ? from.Millimeters * Math.Sin((port.Around?.Degrees ?? 90) * Math.PI / 180)
            : canvas.Profile.Radius * .8 * ((2 * (index + 1.0) / (count + 1)) - 1);
}
