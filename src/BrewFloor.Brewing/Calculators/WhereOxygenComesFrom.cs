using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Oxygen;

namespace BrewFloor.Brewing.Calculators;

internal static class WhereOxygenComesFrom
{
    private const double Excellent = 50; // µg/L (common practice, no source)

    private const double Good = 100; // (the same)

    private const double ShortLived = 200; // (the same)

    public static Calculator Question { get; } =
        new("oxygen", Subject.Oxygen)
        {
            Inputs =
            [
                Asks.Measured("beer", Measure.Volume, 0.01, 1e7, 100),
                Asks.Measured("dissolved", Measure.Trace, 0, 50, 0.03),
                Asks.Headspace,
                Asks.Measured("headspace-oxygen", Measure.Percent, 0, 100, 0.1),
                Asks.Usual("pressure-gauge", Measure.Pressure, 0, 890, 0),
                Asks.Measured("temperature", Measure.Temperature, -5, 40, 4),
                Asks.Usual("hops", Measure.Mass, 0, 10_000, 0),
                Asks.Usual("hop-oxygen", Measure.Percent, 0, 100, 20.95),
                Asks.Usual("liquid", Measure.Volume, 0, 1e7, 0),
                Asks.Usual("liquid-oxygen", Measure.Trace, 0, 50, 8),
                Asks.Altitude,
            ],
            Formula =
            [
                "beer and liquid: volume · mg/L",
                "headspace: share · p · V · 31.998 / (R T), p absolute",
                "hops: 0.9 L of air between a kilogram of pellets",
                "in the beer = sum / beer, as if all of it went in",
            ],
            Sources =
            [
                "A sum; ideal gas",
                "under 50 µg/L excellent, under 100 good, above 200 short-lived: common practice, no source",
            ],
            Checks = ["OX-09", "OX-10", "OX-11"],
            Plot = new Plot("headspace-oxygen", "oxygen-in-beer", 0, 2),
            Compute = given =>
                from air in Atmosphere.At(given.Height("altitude"))
                from beer in OxygenShare.Dissolved(OxygenSource.Beer, given.Volume("beer"), given.Trace("dissolved"))
                from above in OxygenShare.InHeadspace(
                    given.Volume("headspace"),
                    given.ByVolume("headspace-oxygen"),
                    given.Gauge("pressure-gauge") + air,
                    given.Temperature("temperature")
                )
                from hops in OxygenShare.InHops(given.Mass("hops"), given.ByVolume("hop-oxygen"))
                from liquid in OxygenShare.Dissolved(
                    OxygenSource.Liquid,
                    given.Volume("liquid"),
                    given.Trace("liquid-oxygen")
                )
                from budget in OxygenBudget.For(given.Volume("beer"), [beer, above, hops, liquid])
                select Found(budget),
        };

    private static Answer Found(OxygenBudget budget)
    {
        var ppb = budget.InBeer.MicrogramsPerLiter;
        return new Answer([
            new Result("oxygen-in-beer", Figure.Trace(budget.InBeer)),
            .. budget.Shares.Select(share => new Result(Name(share.Source), Figure.Milligrams(share.Oxygen))),
        ])
            .Finding("oxygen-excellent", Weight.Plain, ppb < Excellent)
            .Finding("oxygen-good", Weight.Plain, ppb is >= Excellent and < Good)
            .Finding("oxygen-middling", Weight.Plain, ppb is >= Good and <= ShortLived)
            .Finding("oxygen-short-lived", Weight.Caution, ppb > ShortLived);
    }

    private static string Name(OxygenSource source) =>
        source switch
        {
            OxygenSource.Beer => "oxygen-dissolved",
            OxygenSource.Headspace => "oxygen-headspace",
            OxygenSource.Hops => "oxygen-hops",
            _ => "oxygen-liquid",
        };
}
