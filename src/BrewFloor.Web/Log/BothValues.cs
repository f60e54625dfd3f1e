using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>
/// Two people changed one thing: what the second typed stands in the fields, what the first made of them beside it. What the second
/// left alone is the first's.
/// </summary>
/// <remarks>Each field of such a form says what it opened with, so that nobody needs to remember older versions for it.</remarks>
internal sealed class BothValues
{
    /// <summary>Ends the name of what a field opened with.</summary>
    public const string Was = ".was";

    private readonly Dictionary<string, StringValues> _posted;
    private readonly Dictionary<string, string> _theirs = new(StringComparer.Ordinal);

    private BothValues(IReadOnlyDictionary<string, StringValues> posted) =>
        _posted = new(posted, StringComparer.Ordinal);

    /// <summary>What the form shows now.</summary>
    public IReadOnlyDictionary<string, StringValues> Posted => _posted;

    /// <summary>By field: what the first made of it, where both changed it, each to something else.</summary>
    public IReadOnlyDictionary<string, string> Theirs => _theirs;

    /// <summary>The name of what a field opened with.</summary>
    public static string WasOf(Field field) => field.Name + Was;

    /// <summary>The fields of its rows, or itself.</summary>
    public static IEnumerable<Field> Single(Field field) =>
        field is RowsField rows ? rows.Rows.SelectMany(row => row) : [field];

    /// <param name="posted">By the second.</param>
    /// <param name="fields">As they open now, after the first.</param>
    public static BothValues Of(
        IReadOnlyDictionary<string, StringValues> posted,
        IEnumerable<Field> fields,
        Wording wording
    )
    {
        var both = new BothValues(posted);
        foreach (var field in fields.SelectMany(Single))
        {
            both.Compare(field, wording);
        }

        return both;
    }

    private void Compare(Field field, Wording wording)
    {
        var (was, typed, now) = (TextOf(WasOf(field)), TextOf(field.Name), field.Start ?? "");
        var unit = field is QuantityField quantity ? OwnUnit(quantity, wording) : null;
        if (IsSame(typed, was) && IsIn(field, unit))
        {
            _posted[field.Name] = now;
        }
        else if (!IsSame(now, was) && !(IsSame(typed, now) && IsIn(field, unit)))
        {
            _theirs[field.Name] = Shown(field, now, unit, wording);
        }

        _posted[WasOf(field)] = now;
    }

    private bool IsIn(Field field, string? unit) =>
        unit is null || TextOf(field.Name + ".unit") is not { Length: > 0 } asked || IsSame(asked, unit);

    private static bool IsSame(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private string TextOf(string name) => _posted.TryGetValue(name, out var value) ? value.ToString() : "";

    private static string? OwnUnit(QuantityField field, Wording wording) =>
        field.StartUnit ?? UnitPart.OwnOf(field.Measure, wording.Figures.Units);

    private static string Shown(Field field, string value, string? unit, Wording wording) =>
        field switch
        {
            _ when value is "" => wording["theirs-empty"],
            ChoiceField choice => wording["theirs", new Number("value", TextIn(choice, value))],
            _ => wording["theirs", new Number("value", unit is null ? value : $"{value} {unit}")],
        };

    private static string TextIn(ChoiceField choice, string value) =>
        choice.Options.FirstOrDefault(option => IsSame(option.Value, value)) is { Text: { } text } ? text : value;
}
