using BrewFloor.Brewing.Cleaning;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class ChlorideInWater
{
    private const string Grade316 = "steel-316";

    public static Calculator Question { get; } =
        new("chloride", Subject.Cleaning)
        {
            Cautions = ["chlorine-and-acid", "label-first"],
            Inputs =
            [
                new ChoiceInput("steel", "steel-304", Grade316),
                Asks.Measured("chloride", Measure.Trace, 0, 50_000, 60),
            ],
            Formula = ["careful = 100 mg/L for 304, 1000 mg/L for 316; at most 200 and 1000"],
            Sources =
            [
                "Nickel Institute 11003: natural waters at room temperature, crevice attack rare below",
                "BSSA on sodium hypochlorite: 15 to 20 mg/L residual chlorine on 316, 24 h at most, then rinsed",
            ],
            Checks = ["PA-04", "PA-05"],
            Compute = given =>
            {
                var grade = given.Choice("steel") is Grade316 ? SteelGrade.Grade316 : SteelGrade.Grade304;
                var most = ChlorideLimits.ChlorideMost(grade);
                return from bears in ChlorideLimits.Bears(given.Trace("chloride"), grade)
                    select new Answer([
                        new Result("chloride-careful", InTrace(ChlorideLimits.ChlorideCareful(grade))),
                        new Result("chloride-most", InTrace(most)),
                        .. grade is SteelGrade.Grade316 ? [Chlorine] : Array.Empty<Result>(),
                    ])
                        .Finding("chloride-borne", Weight.Plain, bears)
                        .Finding("chloride-between", Weight.Caution, !bears && given.Trace("chloride") <= most)
                        .Finding("chloride-pits", Weight.Danger, given.Trace("chloride") > most);
            },
        };

    // Published for 316 alone.
    private static Result Chlorine =>
        new(
            "chlorine-most",
            InTrace(ChlorideLimits.ChlorineLeast),
            InTrace(ChlorideLimits.ChlorineLeast),
            InTrace(ChlorideLimits.ChlorineMost)
        );

    private static Figure InTrace(MassConcentration limit) => new(limit.MilligramsPerLiter, Measure.Trace);
}
