using BrewFloor.Brewing.Cleaning;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class StockDilution
{
    public static Calculator Question { get; } =
        new("dilution", Subject.Cleaning)
        {
            Cautions = ["acid", "caustic", "acid-into-water", "chlorine-and-acid", "label-first"],
            Inputs =
            [
                Asks.Measured("solution", Measure.Volume, 0, 100_000, 20),
                Asks.Measured("active", Measure.Trace, 0, 100_000, 150),
                Asks.Measured("concentrate", Measure.Percent, 0.1, 100, 5),
                Asks.Measured("concentrate-density", Measure.Density, 0.7, 2, 1.11),
            ],
            Formula =
            [
                "mL of concentrate in a litre = mg/L / (10 · % by weight · density)",
                "water = solution - concentrate",
            ],
            Sources = ["Mass balance"],
            Checks = ["CI-21"],
            Plot = new Plot("active", "concentrate-volume", 0, 500),
            Compute = given =>
                from stock in Dose.OfConcentrate(
                    given.Volume("solution"),
                    given.Trace("active"),
                    given.ByWeight("concentrate"),
                    Density.FromKilogramsPerLiter(given.Number("concentrate-density"))
                )
                select new Answer(
                    new Result("concentrate-volume", Figure.Of(stock)),
                    new Result("water-volume", Figure.Of(given.Volume("solution") - stock))
                ).Finding("stock-decays", Weight.Plain),
        };
}
