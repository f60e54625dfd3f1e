using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Transfers;

namespace BrewFloor.Brewing.Calculators;

internal static class SealedReceiver
{
    public static Calculator Question { get; } =
        new("sealed-receiver", Subject.Carbonation)
        {
            Cautions = ["pressure", "no-rating-no-pressure"],
            Inputs =
            [
                Asks.Measured("vessel", Measure.Volume, 0.01, 1e7, 25),
                Asks.Measured("filled", Measure.Volume, 0, 1e7, 19),
                Asks.Usual("pressure-gauge", Measure.Pressure, -100, 890, 0),
                Asks.Rating,
                Asks.Altitude,
            ],
            Formula = ["p after = p before · vessel / (vessel - filled), absolute pressures"],
            Sources = ["Boyle; that beer takes up gas is left out"],
            Checks = ["TR-03"],
            Plot = new Plot("filled", "pressure-after", 0, 20),
            Compute = given =>
                from air in Atmosphere.At(given.Height("altitude"))
                from after in PushGas.InSealedReceiver(
                    given.Volume("vessel"),
                    given.Volume("filled"),
                    given.Gauge("pressure-gauge") + air
                )
                select new Answer(new Result("pressure-after", Figure.Of(after - air)))
                    .Finding("over-rating", Weight.Danger, after - air > given.Gauge("rating"))
                    .Finding("let-gas-out", Weight.Caution, after - air <= given.Gauge("rating")),
        };
}
