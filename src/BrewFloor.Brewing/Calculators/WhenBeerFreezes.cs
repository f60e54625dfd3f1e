using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Heat;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class WhenBeerFreezes
{
    private const double Margin = 1.5; // K: the floor's own rule for set points

    public static Calculator Question { get; } =
        new("freezing", Subject.Heat)
        {
            Cautions = ["freezing"],
            Inputs = [Asks.Original, Asks.FinalGravity, Asks.Quotient],
            Formula = ["T = -(0.42 A + 0.04 OE + 0.2), A in % by weight", "lowest set point = T + 1.5 K"],
            Sources =
            [
                "common practice, no primary source: a trade discussion, attributed to a university's note; its example only comes out with all signs negative",
                "alcohol by Balling; the 1.5 K are ours",
            ],
            Checks = ["HE-12", "EX-12"],
            Plot = new Plot("original-gravity", "freezes-at", 1.03, 1.09),
            Compute = given =>
                from quotient in AttenuationQuotient.Of(given.Number("quotient"))
                from reached in Attenuation.From(
                    given.Gravity("original-gravity"),
                    given.Gravity("final-gravity"),
                    quotient
                )
                from freezes in BeerFreezing.PointOf(reached.AlcoholByWeight, reached.Original)
                select new Answer(
                    new Result("freezes-at", Figure.Of(freezes)),
                    new Result("lowest-set-point", Figure.Of(freezes + TemperatureDelta.FromKelvins(Margin))),
                    new Result("alcohol", Figure.Alcohol(reached.AlcoholByVolume))
                ),
        };
}
