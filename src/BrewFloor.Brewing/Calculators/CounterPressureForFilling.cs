using BrewFloor.Brewing.Transfers;

namespace BrewFloor.Brewing.Calculators;

internal static class CounterPressureForFilling
{
    public static Calculator Question { get; } =
        new("counter-pressure", Subject.Carbonation)
        {
            Cautions = ["pressure", "no-rating-no-pressure", "gas"],
            Inputs =
            [
                Asks.Measured("carbonation", Measure.Carbonation, 0.3, 15, 2.5),
                Asks.Measured("warmest", Measure.Temperature, 0, 40, 6),
                Asks.Rating,
                Asks.Altitude,
            ],
            Formula =
            [
                "foams below: the pressure that holds the gas at the warmest spot",
                "fill at that and 0.1 to 0.2 bar",
            ],
            Sources = [.. GasSources.All, "0.1 to 0.2 bar above: common practice, no source"],
            Checks = ["TR-02"],
            Plot = new Plot("warmest", "fill-at", 0, 20),
            Compute = given =>
                from counter in CounterPressure.For(
                    given.Carbonation("carbonation"),
                    given.Temperature("warmest"),
                    given.Height("altitude")
                )
                select new Answer(
                    new Result(
                        "fill-at",
                        new Figure((counter.From.Kilopascals + counter.To.Kilopascals) / 2, Measure.Pressure),
                        Figure.Of(counter.From),
                        Figure.Of(counter.To)
                    ),
                    GasSources.Gauge("foams-below", counter.Least, given.Height("altitude"))
                ).Under(counter.To, given.Gauge("rating")),
        };
}
