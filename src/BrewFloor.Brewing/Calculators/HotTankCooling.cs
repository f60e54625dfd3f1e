using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Cleaning;

namespace BrewFloor.Brewing.Calculators;

internal static class HotTankCooling
{
    public static Calculator Question { get; } =
        new("cooling-vacuum", Subject.Cleaning)
        {
            Cautions = ["hot-closed", "vacuum"],
            Inputs =
            [
                Asks.Measured("hot", Measure.Temperature, 0, 95, 80),
                Asks.Measured("cold", Measure.Temperature, 0, 95, 20),
                Asks.Usual("pressure-gauge", Measure.Pressure, -40, 890, 0),
                Asks.Altitude,
            ],
            Formula = ["air = (p - vapour hot) · T cold / T hot, p absolute, T in K", "left = air + vapour cold"],
            Sources = ["Ideal gas; air full of vapour when it is sealed", "water vapour by Buck"],
            Checks = ["CI-05"],
            Plot = new Plot("hot", "pressure-left", 20, 95),
            Compute = given =>
                from air in Atmosphere.At(given.Height("altitude"))
                from end in Vacuum.ByCooling(
                    given.Temperature("hot"),
                    given.Temperature("cold"),
                    given.Gauge("pressure-gauge") + air
                )
                select new Answer(new Result("pressure-left", Figure.Of(end - air))).Finding(
                    "vacuum-ahead",
                    Weight.Danger,
                    end < air
                ),
        };
}
