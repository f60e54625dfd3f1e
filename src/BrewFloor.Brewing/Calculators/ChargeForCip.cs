using BrewFloor.Brewing.Cleaning;

namespace BrewFloor.Brewing.Calculators;

internal static class ChargeForCip
{
    public static Calculator Question { get; } =
        new("cip", Subject.Cleaning)
        {
            Cautions = ["caustic", "caustic-gas", "hot-closed", "label-first"],
            Inputs =
            [
                .. TankAsks.All,
                Asks.Usual("cover", Measure.Size, 0, 20_000, 50),
                Asks.Measured("lines", Measure.Volume, 0, 10_000, 5),
                Asks.Usual("pool", Measure.Percent, 1, 5, 3),
                Asks.Measured("strength", Measure.Strength, 0, 500, 20),
            ],
            Formula =
            [
                "pool = the larger of: share · tank, and what covers the outlet",
                "solution = pool + pump and hoses",
                "powder = solution · strength",
            ],
            Sources =
            [
                "Mass balance; cone, dishes and cylinder by their closed forms",
                "a pool of 1 to 5 % that covers the outlet: common practice, no source",
            ],
            Checks = ["GE-03", "GE-04", "GE-05", "GE-06", "GE-07", "GE-08"],
            Compute = given =>
                from tank in TankAsks.Tank(given)
                from charge in CipCharge.For(tank, given.Volume("lines"), given.Share("pool"), given.Size("cover"))
                from powder in Dose.OfPowder(charge.Total, given.Strength("strength"))
                select new Answer(
                    new Result("solution", Figure.Of(charge.Total)),
                    new Result("powder", Figure.Of(powder)),
                    new Result("in-the-tank", Figure.Of(charge.Pool)),
                    new Result("tank-total", Figure.Of(tank.Total))
                ),
        };
}
