using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Oxygen;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class PurgeByCycles
{
    public static Calculator Question { get; } =
        new("purge-cycles", Subject.Oxygen)
        {
            Cautions = ["pressure", "no-rating-no-pressure", "gas"],
            Inputs =
            [
                Asks.Measured("space", Measure.Volume, 0, 1e7, 120),
                Asks.Measured("pressure-high", Measure.Pressure, 1, 890, 100),
                Asks.Rating,
                Asks.Usual("pressure-low", Measure.Pressure, 0, 390, 0),
                Asks.Measured("oxygen-wanted", Measure.Percent, 0.0001, 20.95, 0.1),
                Asks.Usual("oxygen-before", Measure.Percent, 0, 100, 20.95),
                Asks.Usual("supply-oxygen", Measure.PartsPerMillion, 0, 10_000, 20),
                Asks.Usual("temperature", Measure.Temperature, -5, 100, 20),
                Asks.Altitude,
            ],
            Formula =
            [
                "y = supply + (before - supply) (low / high)^n, absolute pressures",
                "gas = n · space · (high - low) · M / (R T)",
            ],
            Sources =
            [
                "Crowl, Louvar, Chemical Process Safety, chapter 7, by way of a teaching module",
                "Ideal gas, mixed at each cycle",
                "20 ppm of oxygen in the gas where its sheet says nothing: ours",
            ],
            Checks = ["OX-05", "OX-07", "OX-08", "OX-21", "OX-22"],
            Plot = new Plot("pressure-high", "cycles", 30, 300),
            Compute = given =>
                from high in Above(given)
                from air in Atmosphere.At(given.Height("altitude"))
                let purge = new CyclePurge(
                    given.Gauge("pressure-low") + air,
                    high + air,
                    VolumeConcentration.FromPartsPerMillion(given.Number("supply-oxygen"))
                )
                from exact in purge.CyclesTo(given.ByVolume("oxygen-before"), given.ByVolume("oxygen-wanted"))
                from cycles in Whole(exact)
                from left in purge.After(given.ByVolume("oxygen-before"), cycles)
                from once in purge.GasOfOne(given.Volume("space"), given.Temperature("temperature"))
                select new Answer(
                    new Result("cycles", Figure.Of(cycles)),
                    new Result("oxygen-left", Figure.Of(left)),
                    new Result("gas-in-all", Figure.Of(once * cycles))
                ).Under(high, given.Gauge("rating")),
        };

    // More than a hundred is no way to purge: push higher.
    private static Outcome<int> Whole(double exact) =>
        Accepted.Between(0, 100, Math.Ceiling(exact - 1e-9), "cycles") is { } refusal
            ? refusal
            : (int)Math.Ceiling(exact - 1e-9);

    // In gauge, as it was asked for.
    private static Outcome<Pressure> Above(Given given) =>
        Accepted.Between(given.Number("pressure-low") + 1, 890, given.Number("pressure-high"), "pressure-high", "kPa")
            is { } refusal
            ? refusal
            : given.Gauge("pressure-high");
}
