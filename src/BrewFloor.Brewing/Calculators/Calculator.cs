namespace BrewFloor.Brewing.Calculators;

/// <summary>What a calculator is about; a page of <c>docs/science</c> each.</summary>
public enum Subject
{
    /// <summary>Gravity, extract, alcohol.</summary>
    Extract,

    /// <summary>CO2 in beer.</summary>
    Carbonation,

    /// <summary>Pitching, counting, keeping.</summary>
    Yeast,

    /// <summary>Solutions, rinsing, spraying.</summary>
    Cleaning,

    /// <summary>Purging and what gets in.</summary>
    Oxygen,

    /// <summary>Fermenting, cooling, freezing.</summary>
    Heat,

    /// <summary>Litres and kegs.</summary>
    Volumes,

    /// <summary>Dry hopping.</summary>
    Hops,

    /// <summary>The air people breathe.</summary>
    Room,

    /// <summary>Levels and litres.</summary>
    Tanks,
}

/// <summary>A curve that says more than a number: one result over one input, all else as given.</summary>
/// <param name="Over">The input.</param>
/// <param name="Of">The result.</param>
/// <param name="From">Where the curve begins, in the first unit of the input's measure.</param>
/// <param name="To">Where it ends.</param>
public sealed record Plot(string Over, string Of, double From, double To);

/// <summary>A point of a curve.</summary>
/// <param name="Over">The input.</param>
/// <param name="Of">The result.</param>
public readonly record struct PlotPoint(Figure Over, Figure Of);

/// <summary>A question with all that it takes to answer it, and all that a doubter wants to know about the answer.</summary>
/// <remarks>Pages, programs and <c>docs/science</c> are made from this alone, so that they can't contradict.</remarks>
/// <param name="Name">Its key in addresses, and of its texts: question, assumptions, accuracy.</param>
/// <param name="Subject">What it is about.</param>
public sealed record Calculator(string Name, Subject Subject)
{
    private const int Points = 61;

    /// <summary>What it asks for.</summary>
    public required IReadOnlyList<Input> Inputs { get; init; }

    /// <summary>Lines of arithmetic.</summary>
    public required IReadOnlyList<string> Formula { get; init; }

    /// <summary>Where the formula and its numbers come from.</summary>
    public required IReadOnlyList<string> Sources { get; init; }

    /// <summary>Rows of the table of checks that hold the formula.</summary>
    public required IReadOnlyList<string> Checks { get; init; }

    /// <summary>What can hurt somebody; said before all else. Keys of texts.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>A curve, where it says more.</summary>
    public Plot? Plot { get; init; }

    /// <summary>The arithmetic itself; call it by <see cref="Answer"/>.</summary>
    public required Func<Given, Outcome<Answer>> Compute { private get; init; }

    /// <summary>The answer, or the refusal that names an input or a number on the way.</summary>
    /// <param name="given">Every number in its range.</param>
    public Outcome<Answer> Answer(Given given) => Compute(given);

    /// <summary>The input that a refusal is about; <see langword="null"/> where it is about a number on the way.</summary>
    /// <param name="refusal">From the answer.</param>
    public QuantityInput? InputOf(Refusal refusal)
    {
        var name = Asks.AskedAs(refusal.What);
        var input = Inputs.OfType<QuantityInput>().FirstOrDefault(i => i.Name.Equals(name, StringComparison.Ordinal));
        return input?.Measure.Find(refusal.Unit) is not null || (input is not null && refusal.Unit.Length == 0)
            ? input
            : null;
    }

    /// <summary>The curve, where there is one; gaps are left out.</summary>
    /// <param name="given">As for the answer.</param>
    public IReadOnlyList<PlotPoint> Curve(Given given) =>
        Plot is { } plot
            ?
            [
                .. Enumerable
                    .Range(0, Points)
                    .Select(i => plot.From + ((plot.To - plot.From) * i / (Points - 1)))
                    .Select(at => (At: at, Answer: Compute(given.With(plot.Over, at))))
                    .Where(point => point.Answer.IsDone)
                    .Select(point => (point.At, Result: point.Answer.Value.Find(plot.Of)))
                    .Where(point => point.Result is not null)
                    .Select(point => new PlotPoint(
                        new Figure(point.At, given.Figure(plot.Over).Measure),
                        point.Result!.Value
                    )),
            ]
            : [];
}
