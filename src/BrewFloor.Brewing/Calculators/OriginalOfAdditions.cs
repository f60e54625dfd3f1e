using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class OriginalOfAdditions
{
    public static Calculator Question { get; } =
        new("additions", Subject.Extract)
        {
            Inputs =
            [
                Asks.Measured("wort", Measure.Volume, 0, 1e7, 100),
                Asks.Original,
                Asks.Usual("second-wort", Measure.Volume, 0, 1e7, 0),
                Asks.Usual("second-gravity", Measure.Gravity, 1.0039, 1.1788, 1.048),
                Asks.Usual("sugar", Measure.Mass, 0, 1e6, 0),
                Asks.Usual("fruit", Measure.Mass, 0, 1e6, 0),
                Asks.Usual("fruit-extract", Measure.Percent, 0, 100, 10),
                Asks.Usual("water", Measure.Volume, 0, 1e7, 0),
            ],
            Formula = ["OE = sum(m E) / sum(m)", "m of wort = V · SG · 0.998204 kg/L", "then OE back to SG"],
            Sources =
            [
                "Conservation of mass",
                "Nielsen and others 2007 (Scandinavian School of Brewing): a single original gravity fails once something is added",
            ],
            Checks = ["EX-01", "EX-02", "EX-03", "EX-04", "EX-05", "EX-06", "EX-07", "EX-34"],
            Compute = given =>
                from first in Wort.MassOf(given.Volume("wort"), given.Gravity("original-gravity"))
                from firstExtract in given.Extract("original-gravity")
                from second in Wort.MassOf(given.Volume("second-wort"), given.Gravity("second-gravity"))
                from secondExtract in given.Extract("second-gravity")
                from water in Wort.MassOf(given.Volume("water"), SpecificGravity.Water)
                from all in MixedWort.Of([
                    new(first, MassFraction.FromPercent(firstExtract.Value)),
                    new(second, MassFraction.FromPercent(secondExtract.Value)),
                    new(given.Mass("sugar"), MassFraction.FromPercent(100)),
                    new(given.Mass("fruit"), given.ByWeight("fruit-extract")),
                    new(water, MassFraction.Zero),
                ])
                from gravity in all.Original.ToGravity()
                select new Answer(
                    new Result("original-gravity", Figure.Of(gravity)),
                    new Result("extract", Figure.Of(all.Original)),
                    new Result("mass", Figure.Of(all.Mass))
                ),
        };
}
