using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>The inside of an empty tank: clumps under a tide line, drops, a gleam, or crosses under a paper band.</summary>
internal static class SoilTexture
{
    public static void Draw(SvgText svg, TankCanvas canvas, TankCondition condition)
    {
        switch (condition.Soil)
        {
            case DrawnSoil.Soiled:
                Soiled(svg, canvas, condition.TideLine);
                break;
            case DrawnSoil.Rinsed:
                svg.Filled("url(#x-rinsed)", canvas.Shell());
                break;
            case DrawnSoil.Sanitized:
                svg.Filled("url(#x-sanitized)", canvas.Shell());
                break;
            default:
                Gleam(svg, canvas);
                break;
        }
    }

    /// <summary>The paper band around a sanitized tank, with its tick.</summary>
    public static void Band(SvgText svg, TankCanvas canvas)
    {
        var y = canvas.Y(canvas.Profile.Shoulder + (canvas.Profile.Cylinder * .72));
        var height = canvas.IsLarge ? 26d : 13d;
        svg.Path(
            "sash",
            $"M{canvas.Left - 3} {y}h{(canvas.HalfWidth * 2) + 6}v{height}h{-(canvas.HalfWidth * 2) - 6}z"
        );
        svg.Path(
            "sash-mark",
            $"M{canvas.Centre - (height * .28)} {y + (height * .5)}l{height * .2} {height * .2}l{height * .36} {-height * .4}"
        );
    }

    private static void Soiled(SvgText svg, TankCanvas canvas, Volume tideLine)
    {
        var level = tideLine > Volume.Zero ? canvas.Profile.LevelOf(tideLine) : canvas.Profile.Rim * .8;
        svg.Filled("url(#x-soiled)", canvas.Slice(0, level));
        var half = canvas.Profile.RadiusAt(level) * canvas.Scale;
        var deep = canvas.IsLarge ? 5 : 3;
        var wave = string.Concat(Enumerable.Repeat($"q{Px.Of(half / 8)} {deep} {Px.Of(half / 4)} 0", 8));
        svg.Path("tidemark", $"M{canvas.Centre - half} {canvas.Y(level)}{wave}");
    }

    private static void Gleam(SvgText svg, TankCanvas canvas)
    {
        var (x, y) = (
            canvas.X(canvas.Profile.Radius * .55),
            canvas.Y(canvas.Profile.Shoulder + (canvas.Profile.Cylinder * .86))
        );
        var size = canvas.HalfWidth * .42;
        svg.Path("gleam", $"M{x} {y}l{-size} {size}M{x + 1} {y + (size * .55)}l{-size * .7} {size * .7}");
    }
}
