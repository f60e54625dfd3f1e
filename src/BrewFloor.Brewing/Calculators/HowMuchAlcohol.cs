using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class HowMuchAlcohol
{
    private const double AsBrewedPlusMinus = 0.024; // of itself: by its tables, against their own means

    public static Calculator Question { get; } =
        new("alcohol", Subject.Extract)
        {
            Inputs = [Asks.Original, Asks.FinalGravity, Asks.Quotient],
            Formula =
            [
                "RE = OE - q (OE - AE)",
                "A = (OE - RE) / (2.0665 - 0.010665 OE)",
                "ABV = A SG / 0.79066",
                "apparent degree = 100 (OE - AE) / OE",
                "real degree = 100 (OE - RE) / OE / (1 - 0.005161 RE)",
                "as 532 brews had it: A = (0.372 + 0.00357 OE)(OE - AE)",
            ],
            Sources =
            [
                "Balling, by Nielsen, Kristiansen, Krieger Lassen, Erikstrøm 2007 (Scandinavian School of Brewing)",
                "Savel, Kosin, Broz 2015, Kvasny Prum. 61:120",
                "Cutaia, Reid, Speers 2009, J. Inst. Brew. 115:318, Tables III and VI",
                "ASBC Beer-6 as quoted by Speers 2015",
            ],
            Checks =
            [
                "EX-10",
                "EX-11",
                "EX-12",
                "EX-13",
                "EX-14",
                "EX-15",
                "EX-16",
                "EX-17",
                "EX-18",
                "EX-24",
                "EX-25",
                "EX-26",
                "EX-31",
                "EX-32",
            ],
            Plot = new Plot("final-gravity", "alcohol", 0.998, 1.05),
            Compute = given =>
                from quotient in AttenuationQuotient.Of(given.Number("quotient"))
                from reached in Attenuation.From(
                    given.Gravity("original-gravity"),
                    given.Gravity("final-gravity"),
                    quotient
                )
                from asBrewed in EmpiricalAlcohol.From(reached.Original, reached.Apparent)
                select Found(reached, asBrewed),
        };

    private static Answer Found(Attenuation reached, MassFraction asBrewed)
    {
        var (abv, error) = (reached.AlcoholByVolume, reached.PlusMinus);
        return new Answer(
            new Result("alcohol", Figure.Alcohol(abv), Figure.Alcohol(abv - error), Figure.Alcohol(abv + error)),
            new Result("apparent-degree", Figure.Of(reached.ApparentDegree)),
            new Result("real-degree", Figure.Of(reached.RealDegree)),
            new Result("real-extract", Figure.Of(reached.Real)),
            new Result("alcohol-by-weight", Figure.Of(reached.AlcoholByWeight)),
            new Result(
                "alcohol-as-brewed",
                Figure.Of(asBrewed),
                Figure.Of(asBrewed * (1 - AsBrewedPlusMinus)),
                Figure.Of(asBrewed * (1 + AsBrewedPlusMinus))
            )
        )
            .Finding("not-for-tax", Weight.Plain)
            .Finding("brews-were-others", Weight.Plain, reached.Original.Value is < 10 or > 16);
    }
}
