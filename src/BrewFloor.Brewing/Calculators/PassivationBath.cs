using BrewFloor.Brewing.Cleaning;

namespace BrewFloor.Brewing.Calculators;

internal static class PassivationBath
{
    public static Calculator Question { get; } =
        new("passivation", Subject.Cleaning)
        {
            Cautions = ["acid-into-water", "acid", "hot-closed", "label-first"],
            Inputs =
            [
                Asks.Measured("water", Measure.Volume, 0, 100_000, 20),
                Asks.Usual("bath-strength", Measure.Percent, 4, 10, 5),
                Asks.Measured("bath-temperature", Measure.Temperature, 21, 71, 50),
            ],
            Formula =
            [
                "acid = w / (1 - w) · water · 0.998204 kg/L",
                "time: the shortest treatment that takes the temperature",
            ],
            Sources =
            [
                "ASTM A967 as summarised by processors: citric acid, 4 to 10 % by weight",
                "temperatures and times of Citric 1 to 3: from memory",
                "30 to 60 min, warm: common practice; a finishing journal has 30 to 120 min up to 60 °C",
                "ASTM A380: the steel must be clean first",
            ],
            Checks = ["PA-01", "PA-11"],
            Plot = new Plot("bath-strength", "acid", 4, 10),
            Compute = given =>
                from acid in Passivation.AcidFor(given.Volume("water"), given.ByWeight("bath-strength"))
                from treatment in Passivation.At(given.Temperature("bath-temperature"))
                select new Answer(
                    new Result("acid", Figure.Of(acid)),
                    new Result("bath-time", Figure.Minutes(treatment.Shortest))
                ).Finding("dry-in-air", Weight.Plain),
        };
}
