using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>What is in the tank: jacket behind it, liquid with its texture, sediment, foam, or the soil state.</summary>
internal static class TankInside
{
    public static void Draw(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        Jacket(svg, canvas, condition);
        svg.Path(canvas.Figure.IsPlastic ? "inside moulded" : "inside", canvas.Shell());
        if (condition.HasBeer)
        {
            Beer(svg, canvas, condition);
        }
        else if (condition.IsEmpty)
        {
            SoilTexture.Draw(svg, canvas, condition);
        }
    }

    /// <summary>What lies over wall and fittings: the band, the question mark, the cross.</summary>
    public static void DrawOver(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        if (condition.IsEmpty && condition.Soil is DrawnSoil.Sanitized)
        {
            SoilTexture.Band(svg, canvas);
        }

        if (condition.IsVolumeUnknown)
        {
            Unknown(svg, canvas);
        }

        if (condition.IsOutOfService)
        {
            var (top, bottom) = (canvas.TopEdge - 2, Math.Max(canvas.Y(0), canvas.Floor - 6));
            var (left, right) = (canvas.Left - 4, canvas.Right + 4);
            svg.Path("out-cross", $"M{left} {top}L{right} {bottom}M{right} {top}L{left} {bottom}");
        }
    }

    private static void Jacket(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        if (canvas.Figure.Jacket is not { } jacket)
        {
            return;
        }

        var width = canvas.IsLarge ? 8d : 4d;
        var top = canvas.Y(canvas.Profile.Shoulder + jacket.To.Millimeters);
        var height = (jacket.To - jacket.From).Millimeters * canvas.Scale;
        svg.Path(
            condition.IsChilling ? "jacket chilling" : "jacket",
            $"M{canvas.Left - width} {top}h{width}v{height}h{-width}zM{canvas.Right} {top}h{width}v{height}h{-width}z"
        );
    }

    private static void Beer(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        var level = canvas.Profile.LevelOf(condition.Volume);
        Foam(svg, canvas, condition, level);
        svg.Filled(BeerColour.Of(condition.ColourEbc), canvas.Slice(0, level));
        if (TextureOf(condition) is { } texture)
        {
            svg.Filled(texture, canvas.Slice(0, level));
        }

        Sediment(svg, canvas, condition);
        var (half, y) = (canvas.Profile.RadiusAt(level) * canvas.Scale, canvas.Y(level));
        svg.Path("level", $"M{canvas.Centre - half} {y}h{half * 2}");
    }

    private static string? TextureOf(TankCondition condition)
    {
        var ink = condition.ColourEbc > BeerColour.DarkFromEbc ? "-d" : "";
        return condition.Stage switch
        {
            DrawnStage.Fermenting when condition.Vigour is DrawnVigour.Slow => $"url(#x-slow{ink})",
            DrawnStage.Fermenting when condition.Vigour is DrawnVigour.Hard => $"url(#x-hard{ink})",
            DrawnStage.Fermenting => $"url(#x-fermenting{ink})",
            DrawnStage.Finished => $"url(#x-finished{ink})",
            DrawnStage.Cold => $"url(#x-cold{ink})",
            _ => null,
        };
    }

    private static void Sediment(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        var (below, from) = (Volume.Zero, 0d);
        foreach (var layer in condition.Sediment)
        {
            below += layer.Volume;
            var to = canvas.Profile.LevelOf(below);
            var kind = layer.Kind switch
            {
                SedimentKind.Trub => "trub",
                SedimentKind.Yeast => "yeast",
                _ => "hops",
            };
            svg.Filled($"url(#x-{kind})", canvas.Slice(from, to));
            var half = canvas.Profile.RadiusAt(to) * canvas.Scale;
            svg.Path("seam", $"M{canvas.Centre - half} {canvas.Y(to)}h{half * 2}");
            from = to;
        }
    }

    // A stippled ring with a ragged upper edge; its mean height is true to the litre scale.
    private static void Foam(SvgText svg, TankCanvas canvas, TankCondition condition, double level)
    {
        if (condition.Foam <= Volume.Zero)
        {
            return;
        }

        var top = canvas.Profile.LevelOf(condition.Volume + condition.Foam);
        var (yTop, yLevel) = (canvas.Y(top), canvas.Y(level));
        var half = Math.Min(canvas.Profile.RadiusAt(top), canvas.Profile.RadiusAt(level)) * canvas.Scale;
        var teeth = Math.Max(3, (int)Math.Round(half / (canvas.IsLarge ? 9 : 5)));
        var (step, deep) = (half / teeth, Math.Min(canvas.IsLarge ? 4 : 1.6, (yLevel - yTop) / 2));
        var ragged = string.Concat(
            Enumerable
                .Range(0, teeth)
                .Select(i =>
                    $"l{Px.Of(step * .8)} {Px.Of(i % 3 == 1 ? -deep : deep)}l{Px.Of(step * 1.2)} {Px.Of(i % 3 == 1 ? deep : -deep)}"
                )
        );
        svg.Path("foam", $"M{canvas.Centre - half} {yLevel}V{yTop}{ragged}V{yLevel}z");
    }

    private static void Unknown(SvgText svg, TankCanvas canvas) =>
        svg.Add(
            $"<text class=\"unknown\" x=\"{Px.Of(canvas.Centre)}\" y=\"{Px.Of(canvas.Y(canvas.Profile.Shoulder + (canvas.Profile.Cylinder * .35)))}\">?</text>"
        );
}
