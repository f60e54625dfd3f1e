namespace BrewFloor.Web.Drawing;

/// <summary>The gauge of a pressure-rated tank: a needle for the reading, a red stop where pressure must not go.</summary>
internal static class TankGauge
{
    // The dial ends a quarter above what is allowed.
    private const double DialOverAllowed = 1.25;

    public static double Radius(TankCanvas canvas) => canvas.IsLarge ? 19 : 9.5;

    public static double CentreY(TankCanvas canvas) => canvas.TopEdge - Radius(canvas) - Neck(canvas);

    public static void Draw(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        Relief(svg, canvas);
        if (canvas.Figure.Allowed is not { } allowed)
        {
            return;
        }

        var (radius, x, y) = (Radius(canvas), canvas.Centre, CentreY(canvas));
        svg.Path("fit", $"M{x} {canvas.TopEdge}V{y + radius}");
        svg.Circle("gauge", x, y, radius);
        svg.Path("stop", Spoke(x, y, 1 / DialOverAllowed, radius - 1, radius * .5));
        if (canvas.IsLarge)
        {
            PathData ticks =
                $"{Spoke(x, y, 0, radius - 1, radius - 5)}{Spoke(x, y, .2, radius - 1, radius - 5)}{Spoke(x, y, .4, radius - 1, radius - 5)}{Spoke(x, y, .6, radius - 1, radius - 5)}";
            svg.Path("tick", ticks);
        }

        if (condition.Pressure is { } pressure)
        {
            var share = Math.Clamp(pressure / allowed / DialOverAllowed, 0, 1);
            svg.Path("needle", Spoke(x, y, share, 0, radius * .82));
        }
    }

    private static double Neck(TankCanvas canvas) => canvas.IsLarge ? 8 : 2.5;

    // 0 points down to the left, 1 down to the right, as on a dial.
    private static PathData Spoke(double x, double y, double share, double from, double to)
    {
        var angle = (-225 + (270 * share)) * Math.PI / 180;
        var (dx, dy) = (Math.Cos(angle), Math.Sin(angle));
        return $"M{x + (dx * from)} {y + (dy * from)}L{x + (dx * to)} {y + (dy * to)}";
    }

    private static void Relief(SvgText svg, TankCanvas canvas)
    {
        if (!canvas.Figure.HasReliefValve)
        {
            return;
        }

        var (k, r) = (canvas.Fitting, canvas.Profile.Radius * .66);
        var head = (canvas.Profile.Top - canvas.Profile.Rim) * canvas.Scale;
        svg.Path(
            "fit",
            $"M{canvas.X(r)} {canvas.TopEdge + (head * .25)}v{-12 * k}m{-4 * k} 0h{8 * k}v{-7 * k}h{-8 * k}z"
        );
    }
}
