using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Heat;

namespace BrewFloor.Brewing.Calculators;

internal static class HeatNow
{
    public static Calculator Question { get; } =
        new("heat-now", Subject.Heat)
        {
            Cautions = ["gas"],
            Inputs =
            [
                Asks.Measured("wort", Measure.Volume, 0.01, 1e7, 100),
                Asks.Original,
                Asks.Measured("gravity-before", Measure.Gravity, 0.995, 1.1788, 1.034),
                Asks.Measured("gravity-now", Measure.Gravity, 0.995, 1.1788, 1.024),
                Asks.Measured("hours-between", Measure.Hours, 1, 240, 24),
                Asks.Quotient,
            ],
            Formula =
            [
                "fall a day = q · (apparent before - apparent now) · 24 / hours",
                "heat = wort · fall a day / 100 · 587 kJ/kg (555 to 650)",
            ],
            Sources =
            [
                "Balling (mass balance)",
                "587 kJ/kg, 555 to 650: common practice, no source; thermochemistry gives 563 for glucose (CODATA, NBS tables)",
            ],
            Checks = ["HE-01", "HE-03", "HE-22"],
            Compute = given =>
                from falling in Falling(given)
                from before in given.FermentedTo("gravity-before")
                from now in given.FermentedTo("gravity-now")
                let perDay = (before.Real.Value - now.Real.Value) * 24 / given.Number("hours-between")
                from heat in FermentationHeat.At(now.Fermented.Wort, new DegreesPlato(perDay))
                select new Answer(
                    new Result("heat-now", Figure.Of(heat.Likely), Figure.Of(heat.Low), Figure.Of(heat.High)),
                    new Result("fall-per-day", Figure.Of(new DegreesPlato(perDay)))
                ),
        };

    // It can't have risen, nor stood above its wort: the numbers are mixed up.
    private static Outcome<double> Falling(Given given) =>
        Accepted.Between(
            given.Number("gravity-now"),
            given.Number("original-gravity"),
            given.Number("gravity-before"),
            "gravity-before",
            "SG"
        )
            is { } refusal
            ? refusal
            : given.Number("gravity-before");
}
