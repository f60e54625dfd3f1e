using System.Globalization;

namespace BrewFloor.Brewing.Calculators;

/// <summary>Something a calculator asks for.</summary>
/// <param name="Name">Its key in addresses and programs, and of its label.</param>
public abstract record Input(string Name);

/// <summary>A number with its unit.</summary>
/// <param name="Name">Its key.</param>
/// <param name="Measure">What it measures.</param>
/// <param name="From">The least accepted, in the measure's first unit.</param>
/// <param name="To">The most accepted.</param>
/// <param name="Start">What stands there at first.</param>
public sealed record QuantityInput(string Name, Measure Measure, double From, double To, double Start) : Input(Name)
{
    /// <summary>Left out, the usual value is taken and said to be assumed; otherwise it must be measured.</summary>
    public bool HasUsual { get; init; }

    /// <summary>It is asked for only where this choice stands on this option; null: always.</summary>
    public (string Choice, string Option)? OnlyWith { get; init; }

    /// <summary>It has to be given, as things stand.</summary>
    public bool MustBeGiven(Given given) =>
        !HasUsual
        && (OnlyWith is not { } with || given.Choice(with.Choice).Equals(with.Option, StringComparison.Ordinal));

    /// <summary>The unit it is usually said in; left out: the measure's first.</summary>
    public string? Said { get; init; }

    /// <summary>Nothing, or the refusal in the unit that it was given in.</summary>
    /// <param name="figure">As given.</param>
    /// <param name="unit">The unit it was given in.</param>
    public Refusal? RefusalOf(Figure figure, MeasureUnit unit) =>
        Measure == Measure.Count && !double.IsInteger(figure.Value) ? new Refusal("not-whole", Name, "", "")
        : Accepted.Between(From, To, figure.Value, Name, unit.Symbol) is { } refusal
            ? refusal with
            {
                From = Written(From, unit, Math.Ceiling),
                To = Written(To, unit, Math.Floor),
            }
        : null;

    /// <summary>A refusal of the arithmetic, in the unit that the number was given in.</summary>
    /// <param name="refusal">One whose range is in a unit of this measure.</param>
    /// <param name="unit">The unit it was given in.</param>
    public Refusal InUnit(Refusal refusal, MeasureUnit unit)
    {
        var own = Measure.Find(refusal.Unit) ?? Measure.First;
        return refusal with
        {
            What = Name,
            From = Turned(refusal.From, own, unit, From, Math.Ceiling),
            To = Turned(refusal.To, own, unit, To, Math.Floor),
            Unit = unit.Symbol,
        };
    }

    // An end beyond what is asked for, or that the unit doesn't know, is the input's own.
    private string Turned(string end, MeasureUnit from, MeasureUnit to, double own, Func<double, double> into) =>
        double.TryParse(end, CultureInfo.InvariantCulture, out var value)
            ? Written(
                from.ToFirst(value) is >= double.MinValue and var first ? Math.Clamp(first, From, To) : own,
                to,
                into
            )
            : end;

    // Rounded into the range, so that what the sentence names is itself accepted.
    private static string Written(double end, MeasureUnit unit, Func<double, double> into)
    {
        var value = unit.FromFirst(end);
        var near = Math.Round(value, 4);
        return Accepted.Text(Math.Abs(near - value) <= 1e-9 * Math.Abs(value) ? near : into(value * 1e4) / 1e4);
    }
}

/// <summary>One of a few words.</summary>
/// <param name="Name">Its key.</param>
/// <param name="Options">The first is taken when none is given.</param>
public sealed record ChoiceInput(string Name, params IReadOnlyList<string> Options) : Input(Name);
