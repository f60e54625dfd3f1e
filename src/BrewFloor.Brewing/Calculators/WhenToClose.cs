using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class WhenToClose
{
    private const double EndPlusMinus = 0.3; // °P: what the end is usually known to

    public static Calculator Question { get; } =
        new("spunding", Subject.Carbonation)
        {
            Cautions = ["pressure", "no-rating-no-pressure"],
            Inputs =
            [
                Asks.Measured("carbonation", Measure.Carbonation, 0.3, 15, 2.4),
                Asks.Measured("temperature", Measure.Temperature, 0, 40, 18),
                Asks.FinalGravity,
                Asks.Rating,
                Asks.Measured("headspace-share", Measure.Percent, 0, 200, 20),
                Asks.Measured("crash-temperature", Measure.Temperature, 0, 40, 2),
                Asks.Altitude,
                Asks.Quotient,
            ],
            Formula =
            [
                "dc = target - residual + headspace · valve · M / (R T)",
                "dRE = dc / (4.629 · 1.010), dAE = dRE / q",
                "close at: end + dAE",
                "valve = the pressure that holds the target at this temperature",
            ],
            Sources =
            [
                .. GasSources.All,
                "Balling: 0.4629 g CO2 from a gram of real extract",
                "90 % of the rating: common practice, no source",
            ],
            Checks = ["CO-16", "CO-17", "CO-18", "CO-19", "CO-34"],
            Plot = new Plot("carbonation", "close-at", 1, 4),
            Compute = given =>
                from end in given.Extract("final-gravity")
                from quotient in AttenuationQuotient.Of(given.Number("quotient"))
                let wish = new SpundingWish(
                    given.Carbonation("carbonation"),
                    given.Temperature("temperature"),
                    end,
                    given.Share("headspace-share"),
                    given.Height("altitude"),
                    quotient
                )
                from plan in Spunding.Plan(wish, given.Gauge("rating"))
                from closeAt in plan.CloseAt.ToGravity()
                from cold in Spunding.GaugeAfterCooling(wish, given.Temperature("crash-temperature"))
                select Found(plan, closeAt, cold, given),
        };

    private static Answer Found(SpundingPlan plan, SpecificGravity closeAt, Pressure cold, Given given) =>
        new Answer(
            CloseAt(plan, closeAt),
            GasSources.Gauge("valve", plan.Gauge, given.Height("altitude")),
            new Result("remaining", Figure.Of(plan.Remaining)),
            new Result("gas-needed", Figure.Of(plan.Needed)),
            new Result("gauge-cold", Figure.Of(cold))
        )
            .Under(plan.Gauge, given.Gauge("rating"))
            .Finding("vacuum-cold", Weight.Danger, cold.Kilopascals < 0);

    // An end that is 0.3 °P off moves it as much: earlier is the side with gas enough.
    private static Result CloseAt(SpundingPlan plan, SpecificGravity closeAt) =>
        new("close-at", Figure.Of(closeAt), Off(plan, -EndPlusMinus, closeAt), Off(plan, EndPlusMinus, closeAt));

    private static Figure Off(SpundingPlan plan, double by, SpecificGravity closeAt) =>
        new DegreesPlato(plan.CloseAt.Value + by).ToGravity().Gives(out var off) ? Figure.Of(off) : Figure.Of(closeAt);
}
