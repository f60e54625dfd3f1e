using BrewFloor.Brewing.Heat;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class PadAgainstCold
{
    public static Calculator Question { get; } =
        new("pad", Subject.Heat)
        {
            Cautions = ["pad"],
            Inputs =
            [
                Asks.Measured("wall-area", Measure.Area, 0.001, 10_000, 1.2),
                Asks.Measured("insulation", Measure.Size, 0, 500, 25),
                Asks.Usual("conductivity", Measure.Number, 0.01, 1, 0.038),
                Asks.Usual("air-film", Measure.HeatTransfer, 1, 50, 8),
                Asks.Measured("room", Measure.Temperature, -30, 60, 8),
                Asks.Measured("beer-temperature", Measure.Temperature, -5, 100, 18),
            ],
            Formula = ["loss = A (beer - room) / (thickness / k + 1 / h)", "pad = 1.3 · loss"],
            Sources =
            [
                "Fourier, and a film of air outside",
                "foam 0.035 to 0.040 W/(m K), air about 8 W/(m² K), 1.3 times the loss: common practice, no source",
            ],
            Checks = ["HE-06", "HE-24"],
            Plot = new Plot("room", "pad-power", -10, 18),
            Compute = given =>
                from wall in WallGain.Through(
                    Area.FromSquareMeters(given.Number("wall-area")),
                    given.Size("insulation"),
                    ThermalConductivity.FromWattsPerMeterKelvin(given.Number("conductivity")),
                    HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(given.Number("air-film"))
                )
                from pad in WallGain.PadFor(wall, given.Temperature("room"), given.Temperature("beer-temperature"))
                from gain in WallGain.Into(wall, given.Temperature("room"), given.Temperature("beer-temperature"))
                select new Answer(
                    new Result("pad-power", Figure.Of(pad)),
                    new Result("through-the-wall", Figure.Of(Power.FromWatts(-gain.InWatts())))
                ).Finding("room-warm-enough", Weight.Plain, gain >= Power.Zero),
        };
}
