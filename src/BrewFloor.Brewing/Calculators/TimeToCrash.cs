using BrewFloor.Brewing.Heat;
using UnitsNet;
using CrashOf = BrewFloor.Brewing.Heat.Crash;

namespace BrewFloor.Brewing.Calculators;

internal static class TimeToCrash
{
    // Of a jacket that nobody measured, W/(m² K): common practice, no source.
    private const double ULow = 80;

    private const double UHigh = 250;

    public static Calculator Question { get; } =
        new("crash-time", Subject.Heat)
        {
            Cautions = ["vacuum", "freezing"],
            Inputs =
            [
                Asks.Beer with
                {
                    From = 0.01,
                },
                Asks.Measured("from", Measure.Temperature, -5, 100, 18),
                Asks.Measured("to", Measure.Temperature, -5, 100, 2),
                Asks.Measured("coolant", Measure.Temperature, -30, 95, -3),
                Asks.Measured("area", Measure.Area, 0.001, 10_000, 0.8),
                Asks.Usual("u-value", Measure.HeatTransfer, 0.1, 5000, 120),
                Asks.Measured("chiller", Measure.Power, 0.001, 10_000, 1.5),
                Asks.Usual("gains", Measure.Power, 0, 9_900, 0.1),
            ],
            Formula =
            [
                "load = beer · 1.010 kg/L · 4.05 kJ/(kg K) · (from - to)",
                "by the jacket: t = m c / (U A) · ln((from - coolant) / (to - coolant))",
                "by the chiller: t = load / (power - gains); the slower of both holds",
            ],
            Sources =
            [
                "Lumped cooling; beer 4.05 kJ/(kg K): common practice, from a trade text",
                "U of a jacket 80 to 250, a coil 150 to 400 W/(m² K): from memory or common practice; below 4 °C half of it",
            ],
            Checks = ["HE-04", "HE-05"],
            Plot = new Plot("coolant", "time-in-all", -8, 1.5),
            Compute = given =>
                from passage in HeatPassage.Of(
                    Area.FromSquareMeters(given.Number("area")),
                    HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(given.Number("u-value"))
                )
                let crash = new CrashOf(
                    given.BeerMass("beer"),
                    SpecificHeat.Beer,
                    given.Temperature("from"),
                    given.Temperature("to")
                )
                from load in crash.Load()
                from byJacket in crash.TimeWith(passage, given.Temperature("coolant"))
                from byChiller in crash.TimeBy(given.Power("chiller"), given.Power("gains"))
                select Found(byJacket, byChiller, load, given),
        };

    private static Answer Found(Duration byJacket, Duration byChiller, Energy load, Given given)
    {
        var (inAll, jacket) = (
            new Result("time-in-all", Figure.Of(UnitMath.Max(byJacket, byChiller))),
            new Result("time-by-jacket", Figure.Of(byJacket))
        );
        if (given.IsAssumed("u-value"))
        {
            // The time goes with one over U.
            var (quick, slow) = (
                byJacket * (given.Number("u-value") / UHigh),
                byJacket * (given.Number("u-value") / ULow)
            );
            jacket = jacket with { Low = Figure.Of(quick), High = Figure.Of(slow) };
            inAll = inAll with
            {
                Low = Figure.Of(UnitMath.Max(quick, byChiller)),
                High = Figure.Of(UnitMath.Max(slow, byChiller)),
            };
        }

        return new Answer(
            inAll,
            jacket,
            new Result("time-by-chiller", Figure.Of(byChiller)),
            new Result("heat-in-all", Figure.Of(load))
        )
            .Finding("jacket-decides", Weight.Plain, byJacket > byChiller)
            .Finding("chiller-decides", Weight.Plain, byJacket <= byChiller);
    }
}
