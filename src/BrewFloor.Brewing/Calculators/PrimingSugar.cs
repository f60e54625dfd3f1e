using BrewFloor.Brewing.Carbonation;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class PrimingSugar
{
    public static Calculator Question { get; } =
        new("priming", Subject.Carbonation)
        {
            Cautions = ["bottles"],
            Inputs =
            [
                Asks.Beer,
                Asks.Measured("carbonation", Measure.Carbonation, 0.3, 6, 2.4),
                Asks.Measured("warmest-since", Measure.Temperature, 0, 40, 20),
                Asks.Altitude,
            ],
            Formula =
            [
                "residual = what open beer holds at its warmest since the last gas came",
                "sugar = (target - residual) · beer / 0.4629",
                "least: / 0.5143, as if no yeast grew",
            ],
            Sources =
            [
                .. GasSources.All,
                "Balling: 0.9565 g CO2 from 2.0665 g of extract",
                "molar masses: 4 CO2 from a sucrose (342.30 g/mol); 2 from a dextrose (180.16, with its water 198.17)",
            ],
            Checks = ["CO-15", "CO-31", "EX-19"],
            Plot = new Plot("carbonation", "sugar", 1, 4),
            Compute = given =>
                from residual in ResidualGas.After(given.Temperature("warmest-since"), given.Height("altitude"))
                from priming in Priming.For(given.Volume("beer"), residual, given.Carbonation("carbonation"))
                let error = Priming.Of(given.Volume("beer"), ResidualGas.PlusMinus)
                select new Answer(
                    new Result(
                        "sugar",
                        Figure.Of(priming.Sugar),
                        Figure.Of(Mass.FromKilograms(Math.Max(0, (priming.Least - error.Least).Kilograms))),
                        Figure.Of(priming.Sugar + error.Sugar)
                    ),
                    new Result(
                        "residual",
                        Figure.Of(residual),
                        new Figure(residual.Volumes - ResidualGas.PlusMinus.Volumes, Measure.Carbonation),
                        new Figure(residual.Volumes + ResidualGas.PlusMinus.Volumes, Measure.Carbonation)
                    )
                ),
        };
}
