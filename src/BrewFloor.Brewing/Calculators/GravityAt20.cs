using BrewFloor.Brewing.Extract;

namespace BrewFloor.Brewing.Calculators;

internal static class GravityAt20
{
    private const string At60 = "60-f";

    public static Calculator Question { get; } =
        new("gravity", Subject.Extract)
        {
            Inputs =
            [
                Asks.Measured("reading", Measure.Gravity, 0.98, 1.178, 1.045),
                Asks.Measured("sample-temperature", Measure.Temperature, 0, 40, 28),
                new ChoiceInput("scale", "20-c", At60),
            ],
            Formula =
            [
                "SG = R (1 - 25e-6 (t - t0)) water(t0) / water(t)",
                "P = ((135.997 SG - 630.272) SG + 1111.14) SG - 616.868, to 1.083",
                "P = ((182.46007 SG - 775.68212) SG + 1262.7794) SG - 669.56218, above",
                "extract = P / 100 · SG · 998.204 g/L",
            ],
            Sources =
            [
                "Kell 1975, J. Chem. Eng. Data 20:97, equation 16 (water)",
                "ISO 1768:1975 (glass)",
                "ASBC sucrose table by its cubic; NBS Circular 440 (Bates 1942) above 1.083",
            ],
            Checks =
            [
                "EX-01",
                "EX-02",
                "EX-03",
                "EX-04",
                "EX-05",
                "EX-06",
                "EX-07",
                "EX-08",
                "EX-09",
                "EX-20",
                "EX-21",
                "EX-22",
                "EX-23",
                "VO-04",
            ],
            Plot = new Plot("sample-temperature", "gravity-20", 0, 40),
            Compute = given =>
                from corrected in HydrometerCorrection.At20(
                    given.Gravity("reading"),
                    given.Temperature("sample-temperature"),
                    given.Choice("scale") is At60 ? HydrometerScale.At60Fahrenheit : HydrometerScale.At20Celsius
                )
                from plato in DegreesPlato.From(corrected.Gravity)
                select new Answer([
                    new Result("gravity-20", Figure.Of(corrected.Gravity), Off(corrected, -1), Off(corrected, 1)),
                    new Result("extract", Figure.Of(plato)),
                    .. Held(corrected.Gravity),
                ]).Finding("beyond-known-range", Weight.Caution, !corrected.IsInKnownRange),
        };

    private static Figure Off(CorrectedGravity corrected, int way) =>
        new(corrected.Gravity.Value + (way * HydrometerCorrection.PlusMinus), Measure.Gravity);

    // Below water there is no extract to speak of.
    private static Result[] Held(SpecificGravity gravity) =>
        Wort.ExtractPerVolume(gravity) is { IsDone: true, Value: var held }
            ? [new Result("extract-per-volume", Figure.Of(held))]
            : [];
}
