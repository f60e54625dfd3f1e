using BrewFloor.Brewing.Hops;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class DryHopping
{
    public static Calculator Question { get; } =
        new("dry-hop", Subject.Hops)
        {
            Cautions = ["hops-foam", "creep"],
            Inputs =
            [
                Asks.Beer,
                Asks.Measured("dose", Measure.Strength, 0, 40, 5),
                Asks.Measured("contact", Measure.Days, 0, 60, 4),
            ],
            Formula =
            [
                "pellets = beer · dose; lost = 6 L a kilogram (4 to 8)",
                "creep at worst: 2.0 (1 - exp(-0.139 t)) °P of real extract",
                "its CO2 = 0.4629, its alcohol = 0.4839 of that",
            ],
            Sources =
            [
                "loss: common practice, no primary source",
                "Kirkpatrick, Shellhammer 2018, J. Agric. Food Chem. (abstract): the worst published creep, 10 g/L, with yeast, 20 °C",
                "Lafontaine, Shellhammer 2018, by a lecture's summary: above 8 g/L little is added",
            ],
            Checks = ["DH-01", "DH-02", "DH-03", "KI-06", "KI-07"],
            Plot = new Plot("contact", "creep-gas", 0, 40),
            Compute = given =>
                from hops in DryHop.For(given.Volume("beer"), given.Strength("dose"))
                from creep in HopCreep.Worst(
                    given.Strength("dose") > MassConcentration.Zero ? given.Days("contact") : TimeSpan.Zero
                )
                select new Answer(
                    new Result("pellets", Figure.Of(hops.Pellets)),
                    new Result("beer-lost", Figure.Of(hops.Loss), Figure.Of(hops.LossLow), Figure.Of(hops.LossHigh)),
                    Worst("creep-gas", Figure.Of(creep.Gas)),
                    Worst("creep-alcohol", Figure.Alcohol(creep.Alcohol)),
                    Worst("creep-extract", Figure.Of(creep.RealFall))
                )
                    .Finding("more-adds-little", Weight.Plain, given.Strength("dose") > DryHop.Enough)
                    .Finding("beyond-the-data", Weight.Caution, given.Number("contact") > HopCreep.DataEnd.TotalDays),
        };

    // From nothing to this is possible.
    private static Result Worst(string name, Figure most) => new(name, most, most with { Value = 0 }, most);
}
