using BrewFloor.Brewing.Carbonation;

namespace BrewFloor.Brewing.Calculators;

internal static class GasInBeer
{
    public static Calculator Question { get; } =
        new("carbonation", Subject.Carbonation)
        {
            Cautions = ["pressure"],
            Inputs =
            [
                Asks.Measured("temperature", Measure.Temperature, 0, 40, 4),
                Asks.Measured("pressure-gauge", Measure.Pressure, -100, 950, 100),
                Asks.Altitude,
            ],
            Formula =
            [
                "c = 0.94 · x / (1 - x) · water(T) / 18.01528 · 44.0095 · p, p absolute in bar",
                "x = 0.1 / H, ln(H / MPa) = -6.8346 + 1.2817e4 / T - 3.7668e6 / T² + 2.997e8 / T³",
                "air = 101.325 (1 - 2.25577e-5 h)^5.25588 kPa; 1 volume is 1.9635 g/L",
            ],
            Sources = GasSources.All,
            Checks = [.. GasSources.Chart, "CO-11", "CO-12", "CO-13", "CO-14", "CO-15", "CO-20", "CO-31", "CO-35"],
            Plot = new Plot("pressure-gauge", "carbonation", 0, 300),
            Compute = given =>
                from content in Equilibrium.ContentAt(
                    given.Temperature("temperature"),
                    given.Gauge("pressure-gauge"),
                    given.Height("altitude")
                )
                select new Answer(GasSources.Within("carbonation", content)),
        };
}
