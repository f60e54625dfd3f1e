namespace BrewFloor.Web.Drawing;

/// <summary>What the tank stands on.</summary>
internal static class TankStand
{
    public static void Draw(SvgText svg, TankCanvas canvas)
    {
        if (canvas.Figure.Stand is DrawnStand.Frame)
        {
            Frame(svg, canvas);
        }
        else if (canvas.Figure.Stand is not DrawnStand.None)
        {
            Legs(svg, canvas);
        }
    }

    // A plastic cone hangs in a square frame.
    private static void Frame(SvgText svg, TankCanvas canvas)
    {
        var (left, right, floor) = (canvas.Left - 3, canvas.Right + 3, canvas.Floor);
        var shoulder = canvas.Y(canvas.Profile.Shoulder);
        var top = shoulder - (canvas.Profile.Cylinder * canvas.Scale * .12);
        var rail = floor - ((floor - canvas.Y(0)) * .35);
        svg.Path(
            "stand",
            $"M{left} {top}V{floor}M{right} {top}V{floor}M{left} {rail}H{right}M{left} {shoulder}h3M{right} {shoulder}h-3"
        );
    }

    private static void Legs(SvgText svg, TankCanvas canvas)
    {
        var (left, right) = (canvas.X(-canvas.Profile.Radius * .86), canvas.X(canvas.Profile.Radius * .86));
        var (floor, outlet) = (canvas.Floor, canvas.Y(0));
        var from = outlet - ((outlet - canvas.Y(canvas.Profile.Shoulder)) * .8);
        var foot = canvas.IsLarge ? 5 : 3;
        PathData brace = $"M{left} {floor - ((floor - outlet) * .4)}H{right}";
        svg.Path(
            "stand",
            $"M{left} {from}V{floor}M{right} {from}V{floor}M{left - foot} {floor}h{foot * 2d}M{right - foot} {floor}h{foot * 2d}{(canvas.Figure.Stand is DrawnStand.BracedLegs ? brace.ToString() : null)}"
        );
    }
}
