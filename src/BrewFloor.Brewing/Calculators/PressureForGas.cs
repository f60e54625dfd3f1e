using BrewFloor.Brewing.Carbonation;

namespace BrewFloor.Brewing.Calculators;

internal static class PressureForGas
{
    public static Calculator Question { get; } =
        new("pressure", Subject.Carbonation)
        {
            Cautions = ["pressure", "no-rating-no-pressure", "gas"],
            Inputs =
            [
                Asks.Measured("carbonation", Measure.Carbonation, 0.3, 15, 2.5),
                Asks.Measured("temperature", Measure.Temperature, 0, 40, 4),
                Asks.Beer,
                Asks.Headspace,
                Asks.Rating,
                Asks.Usual("carbonation-now", Measure.Carbonation, 0, 15, 0.8),
                Asks.Altitude,
            ],
            Formula =
            [
                "gauge = c / (g/L per bar at T) - air",
                "into beer = (target - now) · beer",
                "into headspace = gauge · headspace · M / (R T)",
            ],
            Sources = [.. GasSources.All, "Ideal gas, mass balance"],
            Checks = [.. GasSources.Chart, "CO-16", "CO-20", "CO-21", "CO-32", "CO-33", "CO-36"],
            Plot = new Plot("temperature", "regulator", 0, 25),
            Compute = given =>
                from plan in ForcedCarbonation.Plan(
                    new FlatTank(
                        given.Volume("beer"),
                        given.Volume("headspace"),
                        given.Temperature("temperature"),
                        given.Height("altitude")
                    ),
                    given.Carbonation("carbonation-now"),
                    given.Carbonation("carbonation")
                )
                select new Answer(
                    GasSources.Gauge("regulator", plan.Gauge, given.Height("altitude")),
                    new Result("gas-in-all", Figure.Of(plan.IntoBeer + plan.IntoHeadspace)),
                    new Result("gas-into-beer", Figure.Of(plan.IntoBeer)),
                    new Result("gas-into-headspace", Figure.Of(plan.IntoHeadspace))
                ).Under(plan.Gauge, given.Gauge("rating")),
        };
}
