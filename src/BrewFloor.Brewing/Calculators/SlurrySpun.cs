using BrewFloor.Brewing.Yeast;

namespace BrewFloor.Brewing.Calculators;

internal static class SlurrySpun
{
    private const double Million = 1e6;

    public static Calculator Question { get; } =
        new("spun-slurry", Subject.Yeast)
        {
            Inputs =
            [
                Asks.Measured("solids", Measure.Percent, 1, 100, 40),
                Asks.Usual("packed", Measure.Cells, 2500, 5000, 3500),
            ],
            Formula = ["cells in a mL = solids by volume · cells in a mL of packed yeast of this strain"],
            Sources =
            [
                "Arithmetic; cells of 6 to 8 µm packed at 0.64 are 2.4 to 5.7 billion in a mL (computed)",
                "3.5 billion, between 2.5 and 5: ours; count your strain once",
            ],
            Checks = ["YE-29"],
            Plot = new Plot("solids", "slurry-density", 5, 80),
            Compute = given =>
                from spun in SlurryDensity.Spun(
                    given.Share("solids"),
                    new CellDensity(given.Number("packed") * Million)
                )
                select new Answer(
                    new Result("slurry-density", Figure.Of(spun.Likely), Figure.Of(spun.Low), Figure.Of(spun.High))
                ).Finding("count-packed-once", Weight.Caution, given.IsAssumed("packed")),
        };
}
