using BrewFloor.Brewing.Heat;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class HeatOfFermenting
{
    public static Calculator Question { get; } =
        new("fermentation-heat", Subject.Heat)
        {
            Cautions = ["gas"],
            Inputs =
            [
                Asks.Measured("wort", Measure.Volume, 0.01, 1e7, 100),
                Asks.Original,
                Asks.FinalGravity,
                Asks.Usual("steepness", Measure.PerDay, 0.1, 12, 2.4),
                Asks.Quotient,
            ],
            Formula =
            [
                "heat = fermented real extract · 587 kJ/kg (555 to 650)",
                "peak = wort · steepness · fall / 4 · 587 kJ/kg",
                "warming if nothing cools = heat / (wort · 4.0 kJ/(kg K))",
                "CO2 = 0.4629 · fermented real extract",
            ],
            Sources =
            [
                "Balling (mass balance)",
                "587 kJ/kg, 555 to 650: common practice, no source; thermochemistry gives 563 for glucose (CODATA, NBS tables)",
                "2.4 a day for a brisk ale, 0.7 for a lager; cooling for 1.5 times the peak: common practice, no source",
            ],
            Checks = ["HE-01", "HE-02", "HE-03", "HE-22"],
            Plot = new Plot("steepness", "peak", 0.3, 4),
            Compute = given =>
                from end in given.FermentedTo("final-gravity")
                from peak in FermentationHeat.AtPeak(
                    end.Fermented.Wort,
                    end.Original,
                    end.Real,
                    Frequency.FromHertz(given.Number("steepness") / 86_400)
                )
                from warming in FermentationHeat.Warming(end.Fermented, SpecificHeat.Wort)
                select Found(FermentationHeat.Of(end.Fermented), peak, warming, end.Fermented.Formed.CarbonDioxide),
        };

    private static Answer Found(HeatRange<Energy> all, HeatRange<Power> peak, TemperatureDelta warming, Mass gas) =>
        new Answer(
            new Result("peak", Figure.Of(peak.Likely), Figure.Of(peak.Low), Figure.Of(peak.High)),
            new Result("heat-in-all", Figure.Of(all.Likely), Figure.Of(all.Low), Figure.Of(all.High)),
            new Result("warming", Figure.Of(warming)),
            new Result("gas-made", Figure.Of(gas))
        ).Finding("size-for-more", Weight.Plain);
}
