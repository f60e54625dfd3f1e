using BrewFloor.Brewing.Cleaning;

namespace BrewFloor.Brewing.Calculators;

internal static class WeakerFromStock
{
    public static Calculator Question { get; } =
        new("stock", Subject.Cleaning)
        {
            Cautions = ["acid", "caustic", "acid-into-water", "label-first"],
            Inputs =
            [
                Asks.Measured("solution", Measure.Volume, 0, 100_000, 20),
                Asks.Measured("strength", Measure.Strength, 0, 500, 20),
                Asks.Measured("stock-strength", Measure.Strength, 0.001, 2000, 250),
            ],
            Formula = ["stock = solution · strength / strength of the stock, filled up with water"],
            Sources = ["Mass balance: c1 V1 = c2 V2"],
            Checks = ["CI-21"],
            Plot = new Plot("strength", "stock-volume", 0, 100),
            Compute = given =>
                from stock in Dose.OfStock(
                    given.Volume("solution"),
                    given.Strength("strength"),
                    given.Strength("stock-strength")
                )
                select new Answer(
                    new Result("stock-volume", Figure.Of(stock)),
                    new Result("water-volume", Figure.Of(given.Volume("solution") - stock))
                ).Finding("stock-decays", Weight.Plain),
        };
}
