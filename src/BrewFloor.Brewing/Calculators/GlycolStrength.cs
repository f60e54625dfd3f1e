using BrewFloor.Brewing.Heat;

namespace BrewFloor.Brewing.Calculators;

internal static class GlycolStrength
{
    public static Calculator Question { get; } =
        new("glycol", Subject.Heat)
        {
            Cautions = ["glycol-kind"],
            Inputs =
            [
                Asks.Measured("coldest", Measure.Temperature, -21, 20, -6),
                Asks.Usual("margin", Measure.TemperatureDifference, 0, 15, Glycol.EvaporatorMargin.Kelvins),
                Asks.Measured("bath", Measure.Volume, 0, 1_000_000, 100),
                Asks.Usual("swing", Measure.TemperatureDifference, 0, 40, 5),
            ],
            Formula =
            [
                "the weakest mixture that freezes at coldest - margin, 20 % at least",
                "heat = bath · density · specific heat · swing",
            ],
            Sources =
            [
                "an equipment maker's table of 20, 30, 35 and 40 % by weight; freezing points as in Lange's Handbook, 15th ed., Table 5.13",
                "5 K above freezing, 8 K at the evaporator: common practice, no source",
            ],
            Checks = ["HE-07", "HE-08", "HE-09", "HE-10", "HE-11", "HE-21"],
            Plot = new Plot("coldest", "glycol", -15, 0),
            Compute = given =>
                from strength in Glycol.For(given.Temperature("coldest"), given.Difference("margin"))
                from glycol in Glycol.Of(strength)
                from takes in glycol.Takes(given.Volume("bath"), given.Difference("swing"))
                select new Answer(
                    new Result("glycol", Figure.Of(strength)),
                    new Result("freezes-at", Figure.Of(glycol.Freezing)),
                    new Result("bath-takes", Figure.Of(takes))
                ),
        };
}
