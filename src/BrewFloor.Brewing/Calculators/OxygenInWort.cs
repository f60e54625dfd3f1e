using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Oxygen;

namespace BrewFloor.Brewing.Calculators;

internal static class OxygenInWort
{
    public static Calculator Question { get; } =
        new("wort-oxygen", Subject.Oxygen)
        {
            Inputs = [Asks.Original, Asks.Measured("temperature", Measure.Temperature, 0, 40, 18), Asks.Altitude],
            Formula =
            [
                "saturation = water's, under air at one atmosphere · (1 - 0.0189 °P)",
                "at a height: · (air - vapour) / (one atmosphere - vapour)",
            ],
            Sources =
            [
                "water: Benson, Krause 1984 in the form of APHA",
                "wort: Oxford Companion to Beer 2012, 6.6 mg/L at 20 °C and 8.0 at 10 °C, both at 15 °P; the line through them is ours",
            ],
            Checks = ["OX-01", "OX-02", "OX-03", "OX-04", "OX-23"],
            Plot = new Plot("temperature", "oxygen-at-most", 0, 30),
            Compute = given =>
                from wort in given.Extract("original-gravity")
                from air in Atmosphere.At(given.Height("altitude"))
                from most in DissolvedOxygen.InWort(given.Temperature("temperature"), wort, air)
                select new Answer(
                    new Result("oxygen-at-most", new Figure(most.MilligramsPerLiter, Measure.Trace))
                ).Finding("air-gives-no-more", Weight.Plain),
        };
}
