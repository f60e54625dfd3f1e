using BrewFloor.Brewing.Yeast;

namespace BrewFloor.Brewing.Calculators;

internal static class HowMuchYeastGrows
{
    private const double Million = 1e6;

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
                from end in given.FermentedTo("final-gravity")
                from pitched in Pitch.CellsFor(
                    new PitchRate(given.Number("pitch-rate") * Million),
                    end.Original,
                    given.Volume("wort")
                )
                from growth in Growth.Of(pitched, end.Fermented)
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
