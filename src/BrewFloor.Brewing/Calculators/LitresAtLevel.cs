using BrewFloor.Brewing.Tanks;

namespace BrewFloor.Brewing.Calculators;

internal static class LitresAtLevel
{
    public static Calculator Question { get; } =
        new("dip", Subject.Tanks)
        {
            Inputs =
            [
                .. TankAsks.All,
                Asks.Measured("level", Measure.Size, 0, 20_000, 500),
                Asks.Usual("sediment-level", Measure.Size, 0, 20_000, 0),
            ],
            Formula =
            [
                "in the cone: r = r0 + z tan(a/2), V = pi z / 3 (r0² + r0 r + r²)",
                "in a dish: by the radii of its crown and its knuckle; a half ellipsoid is D/4 deep",
                "in the cylinder: pi r² a millimetre",
            ],
            Sources = ["Geometry; what hangs in a tank displaces 0.2 to 3 %: common practice, no source"],
            Checks = ["GE-01", "GE-02", "GE-03", "GE-04", "GE-05", "GE-06", "GE-07", "GE-08", "GE-09"],
            Plot = new Plot("level", "volume", 0, 1000),
            Compute = given =>
                from tank in TankAsks.Tank(given)
                from volume in tank.VolumeAt(given.Size("level"))
                from contents in Contents.Of(tank, given.Size("sediment-level"), given.Size("level"))
                from wet in tank.WettedArea(given.Size("level"))
                select new Answer(
                    new Result("volume", Figure.Of(volume)),
                    new Result("left-above", Figure.Of(contents.Ullage)),
                    new Result(
                        "sediment",
                        Figure.Of(contents.Sediment),
                        Figure.Of(contents.Sediment - contents.SedimentPlusMinus),
                        Figure.Of(contents.Sediment + contents.SedimentPlusMinus)
                    ),
                    new Result("beer-on-it", Figure.Of(contents.Beer)),
                    new Result("tank-total", Figure.Of(tank.Total)),
                    new Result("bottom-volume", Figure.Of(tank.BottomVolume)),
                    new Result("wet-wall", new Figure(wet.SquareMeters, Measure.Area))
                ).Finding("weigh-water", Weight.Plain),
        };
}
