namespace BrewFloor.Web.Drawing;

/// <summary>What is mounted on the tank: lid, vent, spray ball, ports and the outlet valve. All of it in px.</summary>
internal static class TankFittings
{
    public static void Draw(SvgText svg, TankCanvas canvas)
    {
        Top(svg, canvas);
        Vent(svg, canvas);
        foreach (var port in canvas.Figure.Ports)
        {
            Port(svg, canvas, port);
        }

        Outlet(svg, canvas);
    }

    public static void Top(SvgText svg, TankCanvas canvas)
    {
        var (k, figure, rim) = (canvas.Fitting, canvas.Figure, canvas.Y(canvas.Profile.Rim));
        var (left, width, top) = (canvas.Left - (4 * k), (canvas.HalfWidth * 2) + (8 * k), canvas.TopEdge);
        switch (figure.Top)
        {
            case DrawnTop.Lid:
                svg.Path("lid", $"M{left} {rim}h{width}v{-5 * k}h{-width}z");
                break;
            case DrawnTop.ScrewCap:
                svg.Path(
                    "lid moulded",
                    $"M{canvas.Centre - (canvas.HalfWidth * .42)} {top + (3 * k)}v{-11 * k}h{canvas.HalfWidth * .84}v{11 * k}z"
                );
                break;
            case DrawnTop.Bucket:
                svg.Path("lid moulded", $"M{left} {rim}h{width}v{-8 * k}h{-width}z");
                svg.Path(
                    "handle",
                    $"M{canvas.Left} {rim + (8 * k)}q{canvas.HalfWidth} {canvas.HalfWidth * 1.1} {canvas.HalfWidth * 2} 0"
                );
                break;
        }

        if (figure.HasManway)
        {
            svg.Path(
                "lid",
                $"M{canvas.Centre - (canvas.HalfWidth * .3)} {top + 1}v{-9 * k}h{canvas.HalfWidth * .6}v{9 * k}"
            );
        }

        if (figure.HasSprayBall)
        {
            var (x, y) = (canvas.Centre + (canvas.HalfWidth * .3), top + (canvas.IsLarge ? 22 : 10));
            svg.Path("fit", $"M{x} {top}V{y}");
            svg.Circle("fit", x, y, canvas.IsLarge ? 5 : 2.6);
        }
    }

    private static void Vent(SvgText svg, TankCanvas canvas)
    {
        var (k, top) = (canvas.Fitting, canvas.TopEdge);
        if (canvas.Figure.Vent is DrawnVent.Airlock)
        {
            var from = top - (canvas.Figure.Top is DrawnTop.Lid or DrawnTop.Head ? 0 : 8 * k);
            svg.Path("fit", $"M{canvas.Centre} {from}v{-8 * k}m{-5 * k} 0h{10 * k}v{-9 * k}h{-10 * k}z");
        }

        if (canvas.Figure.Vent is DrawnVent.Hose)
        {
            // Over the side and down, into a pot of water.
            var (bend, from) = (9 * k, canvas.Centre - (canvas.HalfWidth * .25));
            var side =
                canvas.Left
                - (
                    canvas.Figure.Jacket is null ? 5 * k
                    : canvas.IsLarge ? 13
                    : 7
                );
            var end = canvas.Y(canvas.Profile.Shoulder + (canvas.Profile.Cylinder * .18));
            svg.Path(
                "pipe",
                $"M{from} {top}v{-9 * k}q0 {-bend} {-bend} {-bend}H{side + bend}q{-bend} 0 {-bend} {bend}V{end}"
            );
        }
    }

    private static void Port(SvgText svg, TankCanvas canvas, DrawnPort port)
    {
        var (k, profile) = (canvas.Fitting, canvas.Profile);
        var look = port.IsFitted ? "port fitted" : "port";
        var side = port.IsOnLeft ? -1d : 1d;
        if (!port.IsInCone)
        {
            var y = canvas.Y(profile.Shoulder + port.Height.Millimeters);
            svg.Path(look, $"M{canvas.X(profile.Radius * side)} {y}h{side * ((7 * k) + 1)}m0 {-4 * k}v{8 * k}");
            return;
        }

        // Square to the cone's wall.
        var (z, outlet) = (port.Height.Millimeters, profile.RadiusAt(0));
        var lean = Math.Atan2(profile.Radius - outlet, profile.Shoulder);
        var (dx, dy) = (side * Math.Cos(lean) * 9 * k, Math.Sin(lean) * 9 * k);
        svg.Path(
            look,
            $"M{canvas.X(profile.RadiusAt(z) * side)} {canvas.Y(z)}l{dx} {dy}m{-dy * .5} {dx * .5}l{dy} {-dx}"
        );
    }

    private static void Outlet(SvgText svg, TankCanvas canvas)
    {
        var (k, y) = (canvas.Fitting, canvas.Y(0));
        if (canvas.Profile.HasCone)
        {
            svg.Path("valve", $"M{canvas.Centre} {y}v{4 * k}m{-5 * k} 0h{10 * k}v{6 * k}h{-10 * k}z");
        }
        else if (canvas.Profile.Shoulder > 0)
        {
            svg.Path("valve", $"M{canvas.Centre} {y}v{10 * k}h{14 * k}m0 {-4 * k}v{8 * k}");
        }
        else if (canvas.Figure.HasTap)
        {
            svg.Path(
                "valve",
                $"M{canvas.X(canvas.Profile.RadiusAt(0))} {y - (7 * k)}h{8 * k}m{-2 * k} {-3 * k}v{8 * k}"
            );
        }
    }
}
