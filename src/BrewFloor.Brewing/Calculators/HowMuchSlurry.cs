using BrewFloor.Brewing.Yeast;

namespace BrewFloor.Brewing.Calculators;

internal static class HowMuchSlurry
{
    public static Calculator Question { get; } =
        new("slurry", Subject.Yeast)
        {
            Inputs =
            [
                Asks.Measured("wort", Measure.Volume, 0, 1e7, 100),
                Asks.Original,
                Asks.Usual("pitch-rate", Measure.PitchRate, 0.05, 10, 1),
                Asks.Usual("slurry-density", Measure.Cells, 1, 6000, 1200),
                Asks.Usual("viability", Measure.Percent, 1, 100, 90),
            ],
            Formula = ["cells = rate · °P · mL of wort", "slurry = cells / (cells in a mL · living share)"],
            Sources =
            [
                "a million living cells for ale, one and a half for lager: common practice, no source",
                "2.3 million counted cells (0.3 g/L of wet yeast) at 12 to 16 °P, 2.9 at 20 to 23 °P: Suihko, Vilpola, Linko 1993",
                "90 % alive where nobody counted: ours",
                "1.2 billion cells in a mL of settled slurry, 0.5 to 3: common practice, no source",
            ],
            Checks = ["YE-03", "YE-04", "YE-09", "YE-21", "YE-26"],
            Plot = new Plot("slurry-density", "slurry", 400, 3000),
            Compute = given =>
                from original in given.Extract("original-gravity")
                from cells in Pitch.CellsFor(
                    new PitchRate(given.Number("pitch-rate") * 1e6),
                    original,
                    given.Volume("wort")
                )
                from slurry in Slurry(given, cells, given.Cells("slurry-density"))
                from thick in Slurry(given, cells, SlurryDensity.Unmeasured.High)
                from thin in Slurry(given, cells, SlurryDensity.Unmeasured.Low)
                select (
                    given.IsAssumed("slurry-density")
                        ? new Answer(slurry with { Low = thick.Value, High = thin.Value }, Cells(cells)).Finding(
                            "slurry-not-counted",
                            Weight.Caution
                        )
                        : new Answer(slurry, Cells(cells))
                ).Finding("viability-not-counted", Weight.Caution, given.IsAssumed("viability")),
        };

    private static Outcome<Result> Slurry(Given given, CellCount cells, CellDensity density) =>
        from volume in Pitch.SlurryFor(cells, density, given.Share("viability"))
        select new Result("slurry", Figure.Of(volume));

    private static Result Cells(CellCount cells) => new("living-cells", Figure.Of(cells));
}
