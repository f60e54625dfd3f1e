using BrewFloor.Brewing.Carbonation;

namespace BrewFloor.Brewing.Calculators;

internal static class GasInCylinder
{
    public static Calculator Question { get; } =
        new("cylinder", Subject.Carbonation)
        {
            Cautions = ["cylinder", "gas"],
            Inputs =
            [
                Asks.Measured("gross", Measure.Mass, 0, 2000, 22),
                Asks.Measured("tare", Measure.Mass, 0, 1000, 14),
                Asks.Measured("cylinder-size", Measure.Volume, 0, 200, 13.4),
                Asks.Usual("temperature", Measure.Temperature, -20, 50, 20),
                Asks.Usual("pressure-gauge", Measure.Pressure, 0, 3000, 500),
                Asks.Measured("each", Measure.Mass, 0.001, 1000, 0.5),
            ],
            Formula =
            [
                "left = gross - tare - size · p · M / (R T), p absolute at the working pressure",
                "uses = left / each, whole",
            ],
            Sources = ["Mass balance", "Ideal gas"],
            Checks = ["OX-08", "TR-04"],
            Compute = given =>
                from still in new Cylinder(
                    given.Mass("gross"),
                    given.Mass("tare"),
                    given.Volume("cylinder-size")
                ).StillGives(given.Temperature("temperature"), given.Gauge("pressure-gauge"))
                from uses in Cylinder.Uses(still, given.Mass("each"))
                select new Answer(
                    new Result("gas-left", Figure.Of(still)),
                    new Result("uses", Figure.Of(uses))
                ).Finding("gauge-says-nothing", Weight.Plain),
        };
}
