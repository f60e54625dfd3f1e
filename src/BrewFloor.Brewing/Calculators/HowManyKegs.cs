using BrewFloor.Brewing.Volumes;

namespace BrewFloor.Brewing.Calculators;

internal static class HowManyKegs
{
    public static Calculator Question { get; } =
        new("kegs", Subject.Volumes)
        {
            Cautions = ["pressure"],
            Inputs =
            [
                Asks.Beer,
                Asks.Measured("temperature", Measure.Temperature, 0, 100, 4),
                Asks.Measured("keg", Measure.Volume, 0.1, 10_000, 19),
                Asks.Usual("loss", Measure.Percent, 0, 50, 2),
            ],
            Formula = ["kegs = (beer - loss) / keg, whole", "at 20 °C: V water(T) / water(20)"],
            Sources = ["Arithmetic; Kell 1975 (water)", "1 to 4 % lost at packaging: common practice, no source"],
            Checks = ["VO-01", "VO-03", "VO-04", "VO-11"],
            Compute = given =>
                from kegs in Kegs.Filled(given.Volume("beer"), given.Volume("keg"), given.Share("loss"))
                from at20 in Contraction.To20(given.Volume("beer"), given.Temperature("temperature"))
                select new Answer(
                    new Result("kegs-full", Figure.Of(kegs.Full)),
                    new Result("rest", Figure.Of(kegs.Rest)),
                    new Result("lost", Figure.Of(kegs.Lost)),
                    new Result("at-20", Figure.Of(at20))
                ),
        };
}
