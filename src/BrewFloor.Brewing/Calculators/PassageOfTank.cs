using BrewFloor.Brewing.Heat;

namespace BrewFloor.Brewing.Calculators;

internal static class PassageOfTank
{
    private const double Doubtful = 0.2; // ours

    public static Calculator Question { get; } =
        new("tank-passage", Subject.Heat)
        {
            Cautions = ["vacuum", "freezing"],
            Inputs =
            [
                Asks.Beer with
                {
                    From = 0.01,
                },
                Asks.Measured("coolant", Measure.Temperature, -30, 30, -3),
                Asks.Measured("area", Measure.Area, 0.001, 10_000, 0.2),
                Asks.Measured("from", Measure.Temperature, -5, 100, 18),
                Asks.Measured("after-1", Measure.Hours, 0.01, 1000, 2),
                Asks.Measured("temperature-1", Measure.Temperature, -5, 100, 11.5),
                Asks.Measured("after-2", Measure.Hours, 0.01, 1000, 4),
                Asks.Measured("temperature-2", Measure.Temperature, -5, 100, 7.2),
            ],
            Formula =
            [
                "ln(T - coolant) falls along a straight line in time: its slope · m c = U A, by least squares",
                "m c = beer · 1.010 kg/L · 4.05 kJ/(kg K)",
            ],
            Sources =
            [
                "Lumped cooling; an overall U goes with the geometry: Larson, Brandon 1988, MBAA Tech. Q. 25:41",
                "beer 4.05 kJ/(kg K): common practice, from a trade text",
            ],
            Checks = ["HE-05"],
            Compute = given => from learned in Learned(given) select Found(learned, given.Number("area")),
        };

    private static Outcome<LearnedPassage> Learned(Given given)
    {
        var learned = CoolDown.Learn(
            given.BeerMass("beer"),
            SpecificHeat.Beer,
            given.Temperature("coolant"),
            [
                new(TimeSpan.Zero, given.Temperature("from")),
                new(TimeSpan.FromHours(given.Number("after-1")), given.Temperature("temperature-1")),
                new(TimeSpan.FromHours(given.Number("after-2")), given.Temperature("temperature-2")),
            ]
        );
        return learned.Refusal is { Row: > 0 } refusal ? refusal with { What = AskedAs(refusal), Row = 0 } : learned;
    }

    // The first reading is what it began at; of the others the time or the temperature is meant.
    private static string AskedAs(Refusal refusal) => refusal.Row == 1 ? "from" : $"{refusal.What}-{refusal.Row - 1}";

    private static Answer Found(LearnedPassage learned, double area)
    {
        var (u, error) = (learned.Passage.WattsPerKelvin / area, learned.PlusMinus.DecimalFractions);
        return new Answer(
            new Result("u-value", InU(u), InU(u * Math.Max(0, 1 - error)), InU(u * (1 + error))),
            new Result("u-plus-minus", Figure.Of(learned.PlusMinus))
        ).Finding("read-more-often", Weight.Caution, error > Doubtful);
    }

    private static Figure InU(double u) => new(u, Measure.HeatTransfer);
}
