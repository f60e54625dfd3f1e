using BrewFloor.Brewing.Cleaning;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class WaterToRinse
{
    public static Calculator Question { get; } =
        new("rinse", Subject.Cleaning)
        {
            Cautions = ["caustic", "acid", "hot-closed", "check-last-rinse"],
            Inputs =
            [
                Asks.Measured("held", Measure.Volume, 0.01, 100_000, 2),
                Asks.Measured("before", Measure.Strength, 0.001, 2000, 20),
                Asks.Measured("after", Measure.Strength, 0.001, 2000, 0.01),
                Asks.Measured("portion", Measure.Volume, 0.01, 100_000, 5),
            ],
            Formula =
            [
                "running: V = held · ln(before / after)",
                "in portions: n = ln(before / after) / ln((held + portion) / held), rounded up",
            ],
            Sources =
            [
                "Mass balance, mixed perfectly",
                "Crowl, Louvar, Chemical Process Safety, chapter 7 (the same law for gas)",
            ],
            Checks = ["CI-23"],
            Plot = new Plot("held", "running-water", 0.5, 10),
            Compute = given =>
                from running in Rinse.Running(given.Volume("held"), given.Strength("before"), given.Strength("after"))
                from portions in Rinse.Portions(
                    given.Volume("held"),
                    given.Volume("portion"),
                    given.Strength("before"),
                    given.Strength("after")
                )
                select new Answer(
                    new Result("running-water", Figure.Of(running)),
                    new Result("portions", Figure.Of(portions)),
                    new Result(
                        "portioned-water",
                        Figure.Of(Volume.FromLiters(portions * given.Volume("portion").Liters))
                    )
                ),
        };
}
