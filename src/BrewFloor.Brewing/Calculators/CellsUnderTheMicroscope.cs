using BrewFloor.Brewing.Yeast;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class CellsUnderTheMicroscope
{
    private static readonly CountingGrid Usual = CountingGrid.Neubauer(1);

    public static Calculator Question { get; } =
        new("cell-count", Subject.Yeast)
        {
            Inputs =
            [
                Asks.Measured("cells-counted", Measure.Count, 1, 100_000, 240),
                Asks.Measured("cells-dead", Measure.Count, 0, 100_000, 9),
                Asks.Measured("squares", Measure.Count, 1, 1000, 10),
                Asks.Measured("dilution", Measure.Number, 1, 100_000, 20),
                Asks.Usual("dilution-error", Measure.Percent, 0, 50, 7),
                Asks.Usual("square-area", Measure.Number, 0.0001, 25, Usual.SquareArea.SquareMillimeters),
                Asks.Usual("chamber-depth", Measure.Number, 0.01, 1, Usual.Depth.Millimeters),
            ],
            Formula =
            [
                "cells in a mL = counted · dilution / (squares · area of a square · depth)",
                "error = √(1 / counted + dilution error²)",
                "living share by Wilson's interval, 19 times of 20",
            ],
            Sources =
            [
                "0.04 mm² by 0.1 mm: the middle squares of an improved Neubauer chamber; ASBC Yeast-4 arithmetic",
                "Wilson 1927 (score interval)",
                "MEBAK M-350: 2 % dead is the target, from 5 % not pitched",
                "diluting errs by 5 to 10 %, 200 cells are enough: common practice, no source",
            ],
            Checks = ["YE-01", "YE-02", "YE-07", "YE-25"],
            Compute = given =>
                from count in CountingChamber.Of(
                    given.Count("cells-counted"),
                    new CountingGrid(
                        given.Count("squares"),
                        Area.FromSquareMillimeters(given.Number("square-area")),
                        Length.FromMillimeters(given.Number("chamber-depth"))
                    ),
                    given.Number("dilution"),
                    given.Share("dilution-error")
                )
                from dead in Dead(given)
                from living in LivingShare.Of(given.Count("cells-counted") - dead, given.Count("cells-counted"))
                select Found(count, living, given.Count("cells-counted")),
        };

    private static Answer Found(YeastCount count, LivingShare living, int counted)
    {
        var (all, error) = (count.Density.PerMillilitre, count.PlusMinus.DecimalFractions);
        return new Answer(
            new Result(
                "slurry-density",
                Figure.Of(count.Density),
                Figure.Of(new CellDensity(all * Math.Max(0, 1 - error))),
                Figure.Of(new CellDensity(all * (1 + error)))
            ),
            new Result("viability", Figure.Of(living.Likely), Figure.Of(living.Low), Figure.Of(living.High)),
            new Result("living-density", Figure.Of(new CellDensity(all * living.Likely.DecimalFractions)))
        )
            .Finding("few-cells", Weight.Caution, counted < CountingChamber.EnoughCells)
            .Finding("yeast-on-target", Weight.Plain, living.Verdict is DeadCellVerdict.OnTarget)
            .Finding("yeast-tolerable", Weight.Plain, living.Verdict is DeadCellVerdict.Tolerable)
            .Finding("yeast-excluded", Weight.Caution, living.Verdict is DeadCellVerdict.Excluded)
            .Finding("blue-flatters", Weight.Caution, living.Likely < LivingShare.BlueIsTrustedFrom);
    }

    private static Outcome<int> Dead(Given given) =>
        Accepted.Between(0, given.Count("cells-counted"), given.Count("cells-dead"), "cells-dead") is { } refusal
            ? refusal
            : given.Count("cells-dead");
}
