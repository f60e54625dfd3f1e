using BrewFloor.Brewing.Yeast;

namespace BrewFloor.Brewing.Calculators;

internal static class AgeOfStoredYeast
{
    public static Calculator Question { get; } =
        new("stored-yeast", Subject.Yeast)
        {
            Inputs =
            [
                Asks.Measured("viability", Measure.Percent, 0, 100, 96),
                Asks.Measured("age", Measure.Days, 0, 30, 5),
                Asks.Measured("kept-at", Measure.Temperature, 0, 25, 3),
                Asks.Usual("barm-alcohol", Measure.Percent, 0, 20, 5),
            ],
            Formula = ["V = V0 exp(-k t), k = 0.0124 exp(0.110 T) a day", "low: 2 k, high: k / 2"],
            Sources =
            [
                "our fit to three points of McCaig, Bendiak 1985, MBAA Tech. Q. (abstract): one lager strain, six days",
                "count after 4 days: a current textbook chapter; above 5 °C, under more than 8 % alcohol, below 85 %: ours",
            ],
            Checks = ["YE-05", "YE-06", "YE-20", "YE-24", "YE-28"],
            Plot = new Plot("age", "viability", 0, 30),
            Compute = given =>
                from left in StorageViability.After(
                    given.Share("viability"),
                    given.Days("age"),
                    given.Temperature("kept-at")
                )
                select new Answer(
                    new Result("viability", Figure.Of(left.Likely), Figure.Of(left.Low), Figure.Of(left.High))
                ).Finding(
                    "count-first",
                    Weight.Caution,
                    YeastKeeping.NeedsCount(
                        given.Days("age"),
                        given.Temperature("kept-at"),
                        given.ByVolume("barm-alcohol"),
                        left
                    )
                ),
        };
}
