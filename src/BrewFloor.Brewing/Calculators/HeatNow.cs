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
                from original in given.Extract("original-gravity")
                from before in given.Extract("gravity-before")
                from now in given.Extract("gravity-now")
                from falling in Falling(given)
                from quotient in AttenuationQuotient.Of(given.Number("quotient"))
                from realBefore in Balling.RealExtract(original, before, quotient)
                from realNow in Balling.RealExtract(original, now, quotient)
                from fermented in Fermented.From(given.Volume("wort"), original, realNow)
                let perDay = (realBefore.Value - realNow.Value) * 24 / given.Number("hours-between")
                from heat in FermentationHeat.At(fermented.Wort, new DegreesPlato(perDay))
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
