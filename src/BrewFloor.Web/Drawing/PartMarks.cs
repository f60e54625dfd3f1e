using BrewFloor.Domain.Tanks;

namespace BrewFloor.Web.Drawing;

/// <summary>A place on the wall and the way out of it: what is drawn there is said along that way and across it, in px.</summary>
internal readonly record struct Frame(double X, double Y, double OutX, double OutY)
{
    /// <summary>A point so far out (inwards: negative) and so far to the side.</summary>
    public PathData P(double along, double across) =>
        $"{X + (OutX * along) - (OutY * across)} {Y + (OutY * along) + (OutX * across)}";

    public (double X, double Y) At(double along) => (X + (OutX * along), Y + (OutY * along));
}

/// <summary>A small mark for every kind of part: shapes that are told apart without words and without colour.</summary>
internal static class PartMarks
{
    /// <summary>How far a mark reaches beyond where it begins, px.</summary>
    public const double Reach = 18;

    /// <param name="svg">Where to.</param>
    /// <param name="f">The port.</param>
    /// <param name="part">What is on it.</param>
    /// <param name="s">Where the part begins, beyond neck and reducer.</param>
    /// <param name="half">Half the part's flange.</param>
    /// <param name="inside">How far there is room inside the tank.</param>
    public static void Draw(SvgText svg, Frame f, Part part, double s, double half, double inside)
    {
        svg.Path("port fitted", $"M{f.P(s + 1.5, -half)}L{f.P(s + 1.5, half)}");
        switch (part)
        {
            case Part.BlankCap:
                svg.Path("part solid", Box(f, s + 2, s + 5, half));
                break;
            case Part.Thermowell or Part.SprayBall or Part.RackingArm or Part.CarbonationStone:
                Inside(svg, f, part, s, inside);
                break;
            case Part.Gauge or Part.SightGlass:
                Round(svg, f, part, s);
                break;
            case Part.Valve or Part.SampleValve or Part.ReliefValve or Part.VacuumRelief:
                Valve(svg, f, part, s);
                break;
            default:
                Outside(svg, f, part, s);
                break;
        }
    }

    /// <summary>A port seen from its face: rings.</summary>
    public static void Face(SvgText svg, double x, double y, double half, Part? part)
    {
        if (part is Part.BlankCap)
        {
            svg.Circle("part solid", x, y, half * .6);
        }
        else if (part is not null)
        {
            svg.Circle("port fitted", x, y, half * .55);
        }
    }

    private static void Inside(SvgText svg, Frame f, Part part, double s, double inside)
    {
        switch (part)
        {
            case Part.Thermowell:
                svg.Path("part", $"M{f.P(0, -1.8)}L{f.P(-inside, -1.8)}L{f.P(-inside, 1.8)}L{f.P(0, 1.8)}z");
                svg.Path("part", Box(f, s + 2, s + 10, 4));
                svg.Path("port fitted", $"M{f.P(s + 10, 0)}L{f.P(s + 16, 0)}");
                break;
            case Part.SprayBall:
                var (x, y) = f.At(-20);
                svg.Path(
                    "port fitted",
                    $"M{f.P(s + 2, 0)}L{f.P(-15, 0)}M{f.P(-27, -7)}L{f.P(-30, -10)}M{f.P(-27, 7)}L{f.P(-30, 10)}M{f.P(-29, 0)}L{f.P(-33, 0)}"
                );
                svg.Circle("part", x, y, 5.5);
                svg.Path("port fitted", $"M{f.P(-18, -2)}h0.1M{f.P(-18, 2)}h0.1M{f.P(-22, 0)}h0.1");
                break;
            case Part.RackingArm:
                svg.Path("port fitted", $"M{f.P(0, 0)}L{f.P(-inside, 0)}v-12");
                svg.Path("part", BowTie(f, s));
                break;
            default: // a carbonation stone
                svg.Path("part", Box(f, -inside, -4, 3));
                svg.Path(
                    "port fitted",
                    $"M{f.P(-8, 1)}h.1M{f.P(-12, -1)}h.1M{f.P(-16, 1)}h.1M{f.P(s + 2, 0)}L{f.P(s + 12, 0)}M{f.P(s + 6, -3)}L{f.P(s + 6, 3)}M{f.P(s + 10, -3)}L{f.P(s + 10, 3)}"
                );
                break;
        }
    }

    private static void Round(SvgText svg, Frame f, Part part, double s)
    {
        if (part is Part.Gauge)
        {
            var (x, y) = f.At(s + 11);
            svg.Path("port fitted", $"M{f.P(s + 2, 0)}L{f.P(s + 5, 0)}");
            svg.Circle("part", x, y, 6.5);
            svg.Path("port fitted", $"M{f.P(s + 11, 0)}L{f.P(s + 14, -4)}");
            return;
        }

        var glass = f.At(s + 9);
        svg.Circle("part", glass.X, glass.Y, 7);
        svg.Circle("port fitted", glass.X, glass.Y, 3.5);
    }

    private static void Valve(SvgText svg, Frame f, Part part, double s)
    {
        switch (part)
        {
            case Part.Valve:
                svg.Path("part", BowTie(f, s));
                svg.Path("port fitted", $"M{f.P(s + 9, 0)}L{f.P(s + 9, -8)}M{f.P(s + 5, -8)}L{f.P(s + 14, -8)}");
                break;
            case Part.SampleValve:
                var (x, y) = f.At(s + 7);
                svg.Path("port fitted", $"M{f.P(s + 2, 0)}L{f.P(s + 7, 0)}v10");
                svg.Circle("part", x, y, 3.2);
                break;
            case Part.ReliefValve:
                svg.Path("part", Box(f, s + 5, s + 17, 5));
                svg.Path(
                    "port fitted",
                    $"M{f.P(s + 2, 0)}L{f.P(s + 5, 0)}M{f.P(s + 6, -3)}L{f.P(s + 9, 3)}L{f.P(s + 12, -3)}L{f.P(s + 15, 3)}"
                );
                break;
            default: // a vacuum relief
                svg.Path("part", Box(f, s + 4, s + 16, 5));
                svg.Path(
                    "port fitted",
                    $"M{f.P(s + 14, 0)}L{f.P(s + 6, 0)}M{f.P(s + 10, -3)}L{f.P(s + 6, 0)}L{f.P(s + 10, 3)}"
                );
                break;
        }
    }

    private static void Outside(SvgText svg, Frame f, Part part, double s)
    {
        switch (part)
        {
            case Part.GasPost:
                svg.Path("part", Box(f, s + 2, s + 13, 3));
                svg.Path("port fitted", $"M{f.P(s + 7, -5)}L{f.P(s + 7, 5)}M{f.P(s + 13, -5)}L{f.P(s + 13, 5)}");
                break;
            case Part.BlowOff: // a hose, up to its bend and down
                svg.Path("port fitted", $"M{f.P(s + 2, 0)}L{f.P(s + 9, 0)}h{(f.OutX < 0 ? -9d : 9d)}v16");
                break;
            case Part.DecarbonationCoil:
                svg.Path(
                    "port fitted",
                    $"M{f.P(s + 2, 0)}L{f.P(s + 4, -5)}L{f.P(s + 7, 5)}L{f.P(s + 10, -5)}L{f.P(s + 13, 5)}L{f.P(s + 16, -5)}L{f.P(s + 18, 0)}v8"
                );
                break;
            case Part.HopPort:
                svg.Path("part", $"M{f.P(s + 2, -4)}L{f.P(s + 15, -9)}L{f.P(s + 15, 9)}L{f.P(s + 2, 4)}z");
                break;
            default:
                svg.Path("part", Box(f, s + 3, s + 13, 5));
                break;
        }
    }

    private static PathData Box(Frame f, double from, double to, double half) =>
        $"M{f.P(from, -half)}L{f.P(to, -half)}L{f.P(to, half)}L{f.P(from, half)}z";

    private static PathData BowTie(Frame f, double s) =>
        $"M{f.P(s + 2, -5)}L{f.P(s + 16, 5)}L{f.P(s + 16, -5)}L{f.P(s + 2, 5)}z";
}
