using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Yeast;

namespace BrewFloor.Brewing.Calculators;

internal static class HowMuchYeastGrows
{
    private const double Million = 1e6;

    private const double Millilitres = 1000;

    public static Calculator Question { get; } =
        new("growth", Subject.Yeast)
        {
            Cautions = ["gas"],
            Inputs =
            [
                Asks.Measured("wort", Measure.Volume, 0.01, 1e7, 100),
                Asks.Original,
                Asks.FinalGravity,
                Asks.Usual("pitch-rate", Measure.PitchRate, 0.05, 10, 1),
                Asks.Quotient,
            ],
            Formula =
            [
                "pitched = wort · rate · °P",
                "dry yeast at most = 0.0532 · fermented real extract",
                "cells after two and three doublings: 4 and 8 times the pitch; cropped: 3 to 5 times",
            ],
            Sources =
            [
                "Balling (mass balance)",
                "two to three doublings: an open lecture note; three to five times the pitch cropped: from memory",
            ],
            Checks = ["EX-19", "EX-33", "YE-27"],
            Compute = given =>
                from original in given.Extract("original-gravity")
                from end in given.Extract("final-gravity")
                from quotient in AttenuationQuotient.Of(given.Number("quotient"))
                from real in Balling.RealExtract(original, end, quotient)
                from fermented in Fermented.From(given.Volume("wort"), original, real)
                let pitched = new CellCount(
                    given.Volume("wort").Liters * Millilitres * given.Number("pitch-rate") * Million * original.Value
                )
                from growth in Growth.Of(pitched, fermented)
                select new Answer(
                    new Result("dry-yeast", Figure.Of(growth.DryYeast)),
                    new Result("cells-grown", Figure.Of(growth.Low), Figure.Of(growth.Low), Figure.Of(growth.High)),
                    new Result(
                        "cells-cropped",
                        Figure.Of(growth.CropLow),
                        Figure.Of(growth.CropLow),
                        Figure.Of(growth.CropHigh)
                    )
                ).Finding("bounds-no-forecast", Weight.Plain),
        };
}
