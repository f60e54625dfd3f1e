namespace BrewFloor.Web.Drawing;

/// <summary>The wall: thin and even in steel with its weld, thick and soft in plastic with its ribs.</summary>
internal static class TankWall
{
    public static void Draw(SvgText svg, TankCanvas canvas)
    {
        var profile = canvas.Profile;
        svg.Path(canvas.Figure.IsPlastic ? "wall moulded" : "wall", canvas.Shell());
        if (!canvas.Figure.IsPlastic && profile.HasCone)
        {
            svg.Path("seam", $"M{canvas.Left} {canvas.Y(profile.Shoulder)}H{canvas.Right}");
        }

        if (canvas.Figure.IsPlastic && profile.HasCone)
        {
            var length = canvas.HalfWidth * .35;
            var (upper, lower) = (
                canvas.Y(profile.Shoulder + (profile.Cylinder * .6)),
                canvas.Y(profile.Shoulder + (profile.Cylinder * .3))
            );
            svg.Path(
                "rib",
                $"M{canvas.Left} {upper}h{length}M{canvas.Right} {upper}h{-length}M{canvas.Left} {lower}h{length}M{canvas.Right} {lower}h{-length}"
            );
        }
    }
}
