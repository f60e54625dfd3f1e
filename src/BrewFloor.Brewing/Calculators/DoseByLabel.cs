using BrewFloor.Brewing.Cleaning;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class DoseByLabel
{
    public static Calculator Question { get; } =
        new("label-dose", Subject.Cleaning)
        {
            Cautions = ["acid", "caustic", "acid-into-water", "label-first"],
            Inputs =
            [
                Asks.Measured("product", Measure.Volume, 0, 1000, 0.03) with
                {
                    Said = "mL",
                },
                Asks.Measured("on-water", Measure.Volume, 0.01, 100_000, 19),
                Asks.Measured("solution", Measure.Volume, 0, 100_000, 40),
            ],
            Formula = ["concentrate = solution · product / water, as the label says both"],
            Sources = ["Arithmetic: the label's own words"],
            Checks = ["CI-09"],
            Plot = new Plot("solution", "concentrate-volume", 0, 200),
            Compute = given =>
                from share in Dose.Of(given.Volume("product"), given.Volume("on-water"))
                let taken = Volume.FromLiters(given.Volume("solution").Liters * share.MillilitersPerLiter / 1000)
                select new Answer(new Result("concentrate-volume", Figure.Of(taken))),
        };
}
