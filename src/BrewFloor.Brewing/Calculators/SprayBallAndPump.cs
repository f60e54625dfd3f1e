using BrewFloor.Brewing.Cleaning;
using BrewFloor.Brewing.Transfers;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class SprayBallAndPump
{
    public static Calculator Question { get; } =
        new("spray-ball", Subject.Cleaning)
        {
            Cautions = ["caustic", "caustic-gas", "hot-closed", "no-foam-in-ball"],
            Inputs =
            [
                Asks.Measured("diameter", Measure.Size, 1, 20_000, 500),
                Asks.Usual("wall-flow", Measure.WallFlow, 10, 100, 25),
                Asks.Usual("spray-pressure", Measure.Pressure, 0, 1000, 150),
                Asks.Measured("rise", Measure.Height, -2, 20, 1.5),
                Asks.Measured("bore", Measure.Size, 1, 200, 25),
                Asks.Measured("hose", Measure.Height, 0, 200, 6),
                Asks.Measured("pump-shut", Measure.Pressure, 0, 5000, 250),
                Asks.Measured("pump-flow", Measure.Flow, 1, 10_000, 80),
                Asks.Measured("pump-head", Measure.Pressure, 0, 5000, 100),
            ],
            Formula =
            [
                "flow = wall flow · pi · diameter",
                "needed = spray pressure + 9.79 kPa a metre of rise + friction",
                "friction by Darcy and Weisbach: 64 / Re below 2,300, 0.3164 Re^-0.25 from 4,000 to 100,000",
                "available: a straight line between the two points of the pump's curve",
            ],
            Sources =
            [
                "Franks, Seiberling in Clean-in-Place for Biopharmaceutical Processes: 25 L/min a metre of circumference",
                "Darcy, Weisbach, Blasius; a smooth wall",
                "100 to 250 kPa at a static ball: common practice, no source",
            ],
            Checks = ["CI-01", "CI-02", "TR-01"],
            Plot = new Plot("diameter", "needed", 300, 2000),
            Compute = given =>
                from flow in SprayFlow.For(given.Size("diameter"), new(given.Number("wall-flow")))
                from friction in HoseFlow.Of(flow, Hose(given))
                from pump in PumpCurve.Of([
                    new(VolumeFlow.Zero, given.Gauge("pump-shut")),
                    new(given.Flow("pump-flow"), given.Gauge("pump-head")),
                ])
                from verdict in pump.Judge(
                    new SprayDuty(flow, given.Gauge("spray-pressure"), given.Height("rise"), friction.Friction)
                )
                select new Answer(
                    new Result("flow", Figure.Of(flow)),
                    new Result("needed", Figure.Of(verdict.Needed)),
                    new Result("available", Figure.Of(verdict.Available)),
                    new Result("friction", Figure.Of(friction.Friction))
                )
                    .Finding("pump-is-enough", Weight.Plain, verdict.IsEnough)
                    .Finding("pump-too-weak", Weight.Caution, !verdict.IsEnough),
        };

    private static Hose Hose(Given given) =>
        new(
            given.Size("bore"),
            given.Height("hose"),
            Length.Zero,
            Density.FromKilogramsPerCubicMeter(998.204),
            DynamicViscosity.FromMillipascalSeconds(1.002)
        );
}
