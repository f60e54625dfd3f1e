using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Cleaning;

namespace BrewFloor.Brewing.Calculators;

internal static class CausticInClosedTank
{
    public static Calculator Question { get; } =
        new("caustic-vacuum", Subject.Cleaning)
        {
            Cautions = ["caustic-gas", "vacuum", "caustic"],
            Inputs =
            [
                Asks.Measured("gas-space", Measure.Volume, 0.01, 1e7, 120),
                Asks.Usual("carbon-dioxide", Measure.Percent, 0, 100, 100),
                Asks.Measured("pressure-gauge", Measure.Pressure, -40, 890, 0),
                Asks.Measured("temperature", Measure.Temperature, 0, 45, 20),
                Asks.Altitude,
            ],
            Formula =
            [
                "taken up = CO2 share · (p - vapour), p absolute; left = p - taken up",
                "CO2 = share · p · V · M / (R T); caustic = 2 · 39.997 / 44.0095 · CO2",
            ],
            Sources = ["Ideal gas; 2 NaOH for each CO2", "water vapour by Buck"],
            Checks = ["CI-03", "CI-04"],
            Compute = given =>
                from air in Atmosphere.At(given.Height("altitude"))
                from end in Vacuum.ByCaustic(
                    given.Volume("gas-space"),
                    given.Share("carbon-dioxide"),
                    given.Gauge("pressure-gauge") + air,
                    given.Temperature("temperature")
                )
                select new Answer(
                    new Result("pressure-left", Figure.Of(end.Left - air)),
                    new Result("gas-taken-up", Figure.Of(end.CarbonDioxide)),
                    new Result("caustic-spent", Figure.Of(end.Caustic))
                ).Finding("vacuum-ahead", Weight.Danger, end.Left < air),
        };
}
