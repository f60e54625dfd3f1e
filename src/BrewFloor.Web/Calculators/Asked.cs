using BrewFloor.Brewing;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Calculators;

/// <summary>Where a number came from.</summary>
public enum Origin
{
    Typed,
    Assumed,
    Example,
    Here,
}

/// <summary>A calculator with what stands in the address of its page, and what comes out.</summary>
public sealed class Asked
{
    public const string UnitEnding = ".unit";

    private const string Altitude = "altitude";

    private readonly IQueryCollection _query;

    private readonly ReadingUnits _units;

    private readonly Dictionary<string, Refusal> _problems = new(StringComparer.Ordinal);

    private readonly HashSet<string> _typed = new(StringComparer.Ordinal);

    private Asked(Calculator calculator, IQueryCollection query, ReadingUnits units) =>
        (Calculator, _query, _units, Given) = (calculator, query, units, Given.NothingTo(calculator));

    public Calculator Calculator { get; }

    public Given Given { get; private set; }

    /// <summary>What comes out; null when something can't be used.</summary>
    public Answer? Answer { get; private set; }

    /// <summary>Why nothing comes out although every number is in its range.</summary>
    public Refusal? Through { get; private set; }

    public IReadOnlyDictionary<string, Refusal> Problems => _problems;

    /// <summary>Reads the address; what isn't in it stands at its start.</summary>
    public static Asked Of(Calculator calculator, IQueryCollection query, ReadingUnits units, Length altitude)
    {
        var asked = new Asked(calculator, query, units);
        if (calculator.Inputs.Any(input => input.Name is Altitude))
        {
            asked.Given = asked.Given.With(Altitude, altitude.Meters);
        }

        foreach (var input in calculator.Inputs)
        {
            asked.Read(input);
        }

        asked.Compute();
        return asked;
    }

    public MeasureUnit UnitOf(QuantityInput input) =>
        input.Measure.Find(_query[input.Name + UnitEnding]) ?? FigureWords.OwnOf(input.Measure, _units);

    /// <summary>What was typed, as it was typed; null when nothing was.</summary>
    public string? TextOf(Input input) => _query.TryGetValue(input.Name, out var text) ? text.ToString() : null;

    public Origin OriginOf(Input input) =>
        _typed.Contains(input.Name) ? Origin.Typed
        : input.Name is Altitude ? Origin.Here
        : input is QuantityInput { HasUsual: false } ? Origin.Example
        : Origin.Assumed;

    private void Read(Input input)
    {
        if (input is ChoiceInput choice)
        {
            ReadChoice(choice);
        }
        else if (input is QuantityInput quantity)
        {
            ReadQuantity(quantity);
        }
    }

    private void ReadChoice(ChoiceInput choice)
    {
        var text = TextOf(choice);
        if (string.IsNullOrEmpty(text))
        {
            return;
        }

        if (choice.Options.Contains(text, StringComparer.Ordinal))
        {
            Given = Given.With(choice.Name, text);
            _typed.Add(choice.Name);
        }
        else
        {
            _problems[choice.Name] = new Refusal("unknown-choice", choice.Name, "", "");
        }
    }

    private void ReadQuantity(QuantityInput input)
    {
        var text = TextOf(input);
        if (text is null || (input.HasUsual && string.IsNullOrWhiteSpace(text)))
        {
            return;
        }

        var (unit, typed) = (UnitOf(input), TypedNumber.Parse(text));
        if (!typed.Gives(out var value))
        {
            _problems[input.Name] = typed.Refusal!;
            return;
        }

        var figure = new Figure(unit.ToFirst(value), input.Measure);
        if (input.RefusalOf(figure, unit) is { } outside)
        {
            _problems[input.Name] = outside;
            return;
        }

        Given = Given.With(input.Name, figure.Value);
        _typed.Add(input.Name);
    }

    private void Compute()
    {
        if (_problems.Count > 0)
        {
            return;
        }

        var found = Calculator.Answer(Given);
        if (found.Gives(out var answer))
        {
            Answer = answer;
        }
        else if (Calculator.InputOf(found.Refusal!) is { } input)
        {
            _problems[input.Name] = input.InUnit(found.Refusal!, UnitOf(input));
        }
        else
        {
            Through = found.Refusal;
        }
    }
}
