using BrewFloor.Brewing.Carbonation;

namespace BrewFloor.Brewing.Calculators;

internal static class SealedTankCrash
{
    public static Calculator Question { get; } =
        new("sealed-crash", Subject.Carbonation)
        {
            Cautions = ["vacuum", "pressure", "gas"],
            Inputs =
            [
                Asks.Beer,
                Asks.Headspace,
                Asks.Measured("temperature", Measure.Temperature, 0, 40, 20),
                Asks.Measured("pressure-gauge", Measure.Pressure, -100, 890, 0),
                Asks.Measured("crash-temperature", Measure.Temperature, 0, 40, 2),
                Asks.Usual("hold", Measure.Pressure, 0, 300, 10),
                Asks.Altitude,
            ],
            Formula =
            [
                "p1 (H1 beer + headspace M / (R T1)) = p0 (H0 beer + headspace M / (R T0)), absolute",
                "at once, by the gas alone: p0 T1 / T0",
                "to feed: hold (H1 beer + headspace M / (R T1)) less what is there",
            ],
            Sources = [.. GasSources.All, "Mass balance, ideal gas"],
            Checks = ["CO-22", "CO-23"],
            Plot = new Plot("crash-temperature", "settled", 0, 25),
            Compute = given =>
                from air in Atmosphere.At(given.Height("altitude"))
                let tank = new SealedTank(
                    given.Volume("beer"),
                    given.Volume("headspace"),
                    given.Temperature("temperature"),
                    given.Gauge("pressure-gauge") + air
                )
                from end in SealedCrash.EndOf(tank, given.Temperature("crash-temperature"))
                from feed in SealedCrash.ToHold(tank, given.Temperature("crash-temperature"), given.Gauge("hold") + air)
                select new Answer(
                    new Result("settled", Figure.Of(end.Settled - air)),
                    new Result("at-once", Figure.Of(end.GasAlone - air)),
                    new Result("gas-to-feed", Figure.Of(feed))
                ).Finding("vacuum-ahead", Weight.Danger, end.Settled < air),
        };
}
