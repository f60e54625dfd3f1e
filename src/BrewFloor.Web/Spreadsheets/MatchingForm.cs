using BrewFloor.Web.Log;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What somebody says the columns mean, as it was posted.</summary>
internal sealed class MatchingForm(IFormCollection form, SheetTable table, SheetFields fields)
{
    private const string Same = "all.";
    private const int LongestText = 200;

    /// <summary>A field that two columns were said to be; the first of them is.</summary>
    public string? Twice { get; private set; }

    /// <summary>The name of a column's list: its field, its unit, the order of its dates.</summary>
    public static string Of(int column, string what) => $"c.{column}.{what}";

    /// <summary>The field as it is asked for once, for every row.</summary>
    /// <param name="none">What is chosen to say nothing.</param>
    public static Field ForAll(Field field, string none)
    {
        var asked = field with { Name = Same + field.Name, IsRequired = false, IsExtra = false };
        return asked is ChoiceField choice ? choice with { Options = [("", none), .. choice.Options] } : asked;
    }

    /// <summary>What was said for every row, as its fields show it.</summary>
    public static IReadOnlyDictionary<string, StringValues> Shown(SheetMatching matching) =>
        matching.Everywhere.ToDictionary(
            same => Same + same.Key,
            same => new StringValues(same.Value),
            StringComparer.Ordinal
        );

    /// <param name="guess">Gives what goes with a field that was chosen just now: its unit, the order of its dates.</param>
    public SheetMatching Read(ColumnGuess guess, Func<Measure, string?> own)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var columns = Enumerable.Range(0, table.Columns).Select(column => Column(column, taken, guess, own)).ToArray();
        var everywhere = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var field in fields.All.Where(field => !taken.Contains(field.Name)))
        {
            if (Text(Same + field.Name) is { Length: > 0 and <= LongestText } text)
            {
                everywhere[field.Name] = text;
                everywhere[field.Name + ".unit"] = Text(Same + field.Name + ".unit");
            }
        }

        return new(columns, everywhere);
    }

    private ColumnMatch Column(int column, HashSet<string> taken, ColumnGuess guess, Func<Measure, string?> own)
    {
        if (fields.Find(Text(Of(column, "field"))) is not { } field)
        {
            return ColumnMatch.None;
        }

        if (!taken.Add(field.Name))
        {
            Twice ??= field.Name;
            return ColumnMatch.None;
        }

        var guessed = guess.For(field, column, own);
        var unit = field is QuantityField quantity ? SheetUnits.Of(Text(Of(column, "unit")), quantity.Measure) : null;
        var order =
            Enum.TryParse<DateOrder>(Text(Of(column, "dates")), out var dates) && Enum.IsDefined(dates)
                ? dates
                : (DateOrder?)null;
        return new(field.Name, unit ?? guessed.Unit, field is DayField or MomentField ? order ?? guessed.Dates : null);
    }

    private string Text(string name) => form[name].ToString().Trim();
}
