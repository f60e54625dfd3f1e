using BrewFloor.Brewing.Cleaning;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class TimeToDrain
{
    public static Calculator Question { get; } =
        new("drain", Subject.Cleaning)
        {
            Cautions = ["vent-while-draining", "label-first"],
            Inputs =
            [
                Asks.Measured("diameter", Measure.Size, 12, 20_000, 500),
                Asks.Measured("outlet", Measure.Size, 2, 500, 38),
                Asks.Measured("level", Measure.Size, 0, 20_000, 500),
                Asks.Usual("discharge", Measure.Number, 0.3, 1, 0.62),
            ],
            Formula = ["t = A / (Cd a) √(2 h / g)", "flow = Cd a √(2 g h)"],
            Sources =
            [
                "Torricelli",
                "Cd of a sharp-edged hole 0.6 to 0.65: from memory; a valve and an elbow let out less",
            ],
            Checks = ["CI-22"],
            Plot = new Plot("level", "time", 0, 2000),
            Compute = given =>
            {
                var draining = new Draining(
                    AreaOf(given.Size("diameter")),
                    AreaOf(given.Size("outlet")),
                    Ratio.FromDecimalFractions(given.Number("discharge"))
                );
                return from narrower in Narrower(given)
                    from time in draining.TimeFrom(given.Size("level"))
                    from flow in draining.FlowAt(given.Size("level"))
                    select new Answer(
                        new Result("time", new Figure(time.Minutes, Measure.Minutes)),
                        new Result("flow-out", Figure.Of(flow))
                    ).Finding("no-more-in-than-out", Weight.Plain);
            },
        };

    // In mm, as it was asked for.
    private static Outcome<Length> Narrower(Given given) =>
        Accepted.Between(2, given.Number("diameter") - 0.1, given.Number("outlet"), "outlet", "mm") is { } refusal
            ? refusal
            : given.Size("outlet");

    private static Area AreaOf(Length diameter) =>
        Area.FromSquareMeters(Math.PI / 4 * diameter.Meters * diameter.Meters);
}
