using BrewFloor.Brewing.Carbonation;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>A number that comes out.</summary>
/// <param name="Name">Its key in programs, and of its label.</param>
/// <param name="Value">The number.</param>
/// <param name="Low">At the low end of what is uncertain; <see langword="null"/> where the accuracy says it in words.</param>
/// <param name="High">At the high end.</param>
public sealed record Result(string Name, Figure Value, Figure? Low = null, Figure? High = null);

/// <summary>How much a finding matters.</summary>
public enum Weight
{
    /// <summary>Good, or merely worth knowing.</summary>
    Plain,

    /// <summary>Think again.</summary>
    Caution,

    /// <summary>It can hurt someone or break a tank.</summary>
    Danger,
}

/// <summary>What the numbers say, as a code; the sentence is in the texts.</summary>
/// <param name="Code">The key of the sentence.</param>
/// <param name="Weight">How much it matters.</param>
public sealed record Finding(string Code, Weight Weight);

/// <summary>What comes out of a calculator.</summary>
/// <param name="Results">The first answers the question.</param>
public sealed record Answer(params IReadOnlyList<Result> Results)
{
    /// <summary>What the numbers say; the gravest first.</summary>
    public IReadOnlyList<Finding> Findings { get; private init; } = [];

    /// <summary>One of the results; null where these numbers have none of the name.</summary>
    public Result? Find(string name) =>
        Results.FirstOrDefault(result => result.Name.Equals(name, StringComparison.Ordinal));

    /// <summary>With a finding, where it holds.</summary>
    /// <param name="code">The key of the sentence.</param>
    /// <param name="weight">How much it matters.</param>
    /// <param name="holds">Whether it does.</param>
    public Answer Finding(string code, Weight weight, bool holds = true) =>
        holds
            ? this with
            {
                Findings = [.. Findings.Append(new Finding(code, weight)).OrderByDescending(f => f.Weight)],
            }
            : this;

    /// <summary>Held against what the tank bears: above nine tenths of it a danger, and beyond it another.</summary>
    /// <param name="gauge">What it would stand under.</param>
    /// <param name="rating">The lower of rating and relief valve.</param>
    internal Answer Under(Pressure gauge, Pressure rating) =>
        Finding("over-rating", Weight.Danger, gauge > rating)
            .Finding(
                "near-rating",
                Weight.Danger,
                gauge <= rating && gauge > rating * Spunding.NearRating.DecimalFractions
            );
}
