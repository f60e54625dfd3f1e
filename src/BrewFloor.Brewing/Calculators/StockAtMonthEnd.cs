using BrewFloor.Brewing.Volumes;

namespace BrewFloor.Brewing.Calculators;

internal static class StockAtMonthEnd
{
    private const double Rounding = 0.0005; // L: sums of decimal litres are off by less

    public static Calculator Question { get; } =
        new("month-end", Subject.Volumes)
        {
            Inputs =
            [
                Booked("opening", 800),
                Booked("produced", 1200),
                Booked("received", 0),
                Booked("removed", 1100),
                Booked("losses", 40),
                Booked("counted", 855),
            ],
            Formula =
            [
                "expected = opening + produced + received - removed - losses",
                "difference = counted - expected; the next month opens with what was counted",
            ],
            Sources = ["Arithmetic; the bones of the US brewer's report, TTB F 5130.9: barrels to two decimals"],
            Checks = ["TT-01", "VO-01"],
            Compute = given =>
            {
                var month = new MonthlySummary(
                    given.Volume("opening"),
                    given.Volume("produced"),
                    given.Volume("received"),
                    given.Volume("removed"),
                    given.Volume("losses"),
                    given.Volume("counted")
                );
                return new Answer(
                    new Result("expected", Figure.Of(month.Expected)),
                    new Result("difference", Figure.Of(month.Difference))
                )
                    .Finding("more-than-booked", Weight.Plain, month.Difference.Liters > Rounding)
                    .Finding("less-than-booked", Weight.Caution, month.Difference.Liters < -Rounding)
                    .Finding("no-tax-advice", Weight.Plain);
            },
        };

    private static QuantityInput Booked(string name, double start) =>
        Asks.Measured(name, Measure.Volume, 0, 1e7, start);
}
