using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>The litre scale of a large drawing: true dip marks, so that they spread in the cone.</summary>
internal static class LitreScale
{
    private const double LeastBetweenFigures = 15;

    private static readonly double[] Steps = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000];

    public static void Draw(SvgText svg, TankCanvas canvas)
    {
        var total = canvas.Figure.Shape.Total.Liters;
        var every = Steps.FirstOrDefault(step => total / step <= 12, total);
        var x =
            canvas.Left - (canvas.Figure.Jacket is null && !canvas.Figure.Ports.Any(port => port.IsOnLeft) ? 5 : 12);
        var (ticks, figures, last) = ("", "", double.MaxValue);
        for (var half = 0; half * every / 2 <= total; half++)
        {
            var (litres, isMain) = (half * every / 2, half % 2 == 0);
            var y = canvas.YOf(Volume.FromLiters(litres));
            ticks += $"M{Px.Of(x)} {Px.Of(y)}h{(isMain ? "-9" : "-5")}";
            if (isMain && last - y > LeastBetweenFigures)
            {
                figures += $"<text x=\"{Px.Of(x - 12)}\" y=\"{Px.Of(y + 4)}\">{Px.Of(litres)}</text>";
                last = y;
            }
        }

        svg.Path("tick", $"{ticks}");
        svg.Add($"<g class=\"tick-text\">{figures}</g>");
        if (canvas.Figure.Working is { } working)
        {
            svg.Path("working", $"M{x} {canvas.YOf(working)}H{canvas.Right}");
        }
    }
}
