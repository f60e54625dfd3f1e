using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Oxygen;
using BrewFloor.Brewing.Transfers;

namespace BrewFloor.Brewing.Calculators;

internal static class PurgeBySweep
{
    public static Calculator Question { get; } =
        new("purge-sweep", Subject.Oxygen)
        {
            Cautions = ["gas", "pressure"],
            Inputs =
            [
                Asks.Measured("space", Measure.Volume, 0.01, 1e7, 120),
                Asks.Measured("oxygen-wanted", Measure.Percent, 0.0001, 20.95, 0.1),
                Asks.Usual("oxygen-before", Measure.Percent, 0.0001, 100, 20.95),
                Asks.Usual("unfilled", Measure.Percent, 0, 100, 2),
                Asks.Usual("temperature", Measure.Temperature, -5, 40, 20),
                Asks.Altitude,
            ],
            Formula =
            [
                "mixed: gas = space · ln(before / wanted)",
                "kg = gas · p · M / (R T) at the air's own pressure",
                "by water pushed out: what wasn't filled · 20.95 %",
            ],
            Sources =
            [
                "Crowl, Louvar, Chemical Process Safety, chapter 7, by way of a teaching module",
                "2 % of a tank not filled with water: ours, measure it",
                "a real sweep lies between one volume and worse than mixed: common practice, no source",
            ],
            Checks = ["OX-06", "OX-24"],
            Plot = new Plot("oxygen-wanted", "sweep-gas", 0.02, 2),
            Compute = given =>
                from gas in SweepPurge.GasFor(
                    given.Volume("space"),
                    given.ByVolume("oxygen-before"),
                    given.ByVolume("oxygen-wanted")
                )
                from air in Atmosphere.At(given.Height("altitude"))
                from mass in PushGas.For(gas, air, given.Temperature("temperature"))
                from byWater in SweepPurge.AfterDisplacement(given.Share("unfilled"))
                select new Answer(
                    new Result("sweep-gas", Figure.Of(gas)),
                    new Result("gas-in-all", Figure.Of(mass)),
                    new Result("oxygen-by-water", Figure.Of(byWater))
                ).Finding("no-blanket", Weight.Plain),
        };
}
