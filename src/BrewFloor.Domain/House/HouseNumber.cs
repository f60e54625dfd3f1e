using BrewFloor.Brewing;

namespace BrewFloor.Domain.House;

/// <summary>What a number of the house is about; the order they are shown in.</summary>
public enum HouseSubject
{
    Sanitizing,
    Passivation,
    Cleaning,
    Sediment,
    Gravity,
    Yeast,
    Pressure,
    Volumes,
    Writing,
}

/// <summary>What a number of the house is in.</summary>
public enum HouseUnit
{
    Hours,
    Days,
    Months,
    Times,
    Percent,
    Celsius,
    Plato,
    PlatoPerDay,
    SpecificGravity,
    AlcoholByVolume,
    Litres,
}

/// <summary>Where the number comes from that the house began with.</summary>
public enum HouseBasis
{
    /// <summary>Common practice of the trade, no published source.</summary>
    Trade,

    /// <summary>Chosen for this program, no source.</summary>
    Ours,
}

/// <summary>One number of the house rules: what it is called, what it is in, and how far it may be changed.</summary>
/// <param name="Key">Of its texts, for example <c>sanitized-sealed</c>; stays the same for good.</param>
/// <param name="Least">The lowest that makes sense; ours, no source.</param>
/// <param name="Most">The highest that makes sense; ours, no source.</param>
/// <param name="Of">The number in the rules.</param>
/// <param name="With">The rules with another number.</param>
public sealed record HouseNumber(
    string Key,
    HouseUnit Unit,
    double Least,
    double Most,
    Func<HouseRules, double> Of,
    Func<HouseRules, double, HouseRules> With
)
{
    public HouseSubject Subject { get; init; }

    public HouseBasis Basis { get; init; }

    /// <summary>Half a month means nothing, half an hour does.</summary>
    public bool IsWhole => Unit is HouseUnit.Months or HouseUnit.Days or HouseUnit.Times;

    /// <summary>As it is typed and shown: with a point, and no digits that mean nothing.</summary>
    public string Text(HouseRules rules) => Shown(Of(rules));

    /// <summary>What is typed, if it makes sense.</summary>
    public Outcome<double> Read(string? typed)
    {
        var number = TypedNumber.Parse(typed);
        if (!number.Gives(out var value))
        {
            return number;
        }

        if (value < Least || value > Most)
        {
            return new Refusal("house-range", Key, Shown(Least), Shown(Most));
        }

        return IsWhole && value % 1 > 0 ? new Refusal("not-whole", Key, "", "") : value;
    }

    public static string Shown(double value) =>
        Math.Round(value, 6).ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);
}
