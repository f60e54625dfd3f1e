using System.Text.RegularExpressions;
using BrewFloor.Brewing;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What the columns of a spreadsheet may mean, by the words above them. A guess: whoever brings it has the last word.</summary>
internal sealed partial class ColumnGuess(SheetTable table, SheetFields fields)
{
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    /// <param name="own">The unit of a reader who wrote none.</param>
    public SheetMatching Match(Func<Measure, string?> own)
    {
        var columns = new ColumnMatch[table.Columns];
        foreach (var column in Enumerable.Range(0, columns.Length))
        {
            columns[column] = One(column, own);
        }

        return new(columns, new Dictionary<string, string>(StringComparer.Ordinal));
    }

    /// <summary>What goes with a field that somebody chose: the unit that the header names, the order its dates are in.</summary>
    public ColumnMatch For(Field field, int column, Func<Measure, string?> own)
    {
        var (_, unit) = Parted(table.At(table.Header, column).Text);
        return field switch
        {
            QuantityField quantity => new(field.Name, UnitOf(quantity, unit, column, own)),
            DayField or MomentField => new(field.Name, Dates: SheetDates.Guess(Texts(column))),
            _ => new(field.Name),
        };
    }

    private ColumnMatch One(int column, Func<Measure, string?> own) =>
        FieldOf(Parted(table.At(table.Header, column).Text).Name) is { } field && _taken.Add(field.Name)
            ? For(field, column, own)
            : ColumnMatch.None;

    // The form's own word before any other's; of two fields that are called alike, the first that is free.
    private Field? FieldOf(string header)
    {
        var plain = SheetSynonyms.Plain(header);
        var free = fields.All.Where(field => !_taken.Contains(field.Name)).ToArray();
        return plain.Length == 0
            ? null
            : free.FirstOrDefault(field => IsCalled(field, plain))
                ?? free.FirstOrDefault(field =>
                    SheetSynonyms.Headers.TryGetValue(field.Name, out var words)
                    && words.Contains(plain, StringComparer.Ordinal)
                );
    }

    private bool IsCalled(Field field, string plain) =>
        string.Equals(SheetSynonyms.Plain(fields.Called(field)), plain, StringComparison.Ordinal);

    // A unit that is written and not known is not replaced by another: somebody has to choose.
    private string? UnitOf(QuantityField field, string unit, int column, Func<Measure, string?> own) =>
        unit.Length > 0 ? SheetUnits.Of(unit, field.Measure)
        : field.Measure is Measure.Gravity ? GravityOf(column) ?? own(field.Measure)
        : own(field.Measure);

    // No wort is as light as 1.2 °P by chance in every row, and none as heavy as 1.2 SG.
    private string? GravityOf(int column)
    {
        double[] numbers =
        [
            .. Texts(column).Select(TypedNumber.Parse).Where(number => number.IsDone).Select(number => number.Value),
        ];
        return numbers.Length == 0 ? null
            : Array.TrueForAll(numbers, number => number is >= 0.98 and <= 1.2) ? "SG"
            : Array.TrueForAll(numbers, number => number is > 1.2 and <= 40) ? "°P"
            : null;
    }

    private IEnumerable<string> Texts(int column) =>
        table
            .Below.Select(row => table.At(row, column))
            .Where(cell => !cell.IsEmpty && cell.On is null)
            .Select(cell => cell.Text);

    /// <summary>"Volume (L)", "Volume [hL]", "volume_hl", "Volume, L", "Temp in °C".</summary>
    internal static (string Name, string Unit) Parted(string header)
    {
        var bracketed = Bracketed().Match(header);
        if (bracketed.Success)
        {
            return (bracketed.Groups["name"].Value, bracketed.Groups["unit"].Value);
        }

        var last = Last().Match(header);
        return last.Success && SheetUnits.IsKnown(last.Groups["unit"].Value)
            ? (last.Groups["name"].Value, last.Groups["unit"].Value)
            : (header, "");
    }

    [GeneratedRegex(
        @"^(?<name>[^(\[]*)[(\[](?<unit>[^)\]]*)[)\]]\s*\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Bracketed();

    [GeneratedRegex(
        @"^(?<name>.*?)(\s+in\s+|[\s_,/]+)(?<unit>[^\s_,/]+)\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase,
        1000
    )]
    private static partial Regex Last();
}
