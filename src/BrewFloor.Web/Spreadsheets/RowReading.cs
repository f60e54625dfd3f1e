using System.Globalization;
using System.Text.RegularExpressions;
using BrewFloor.Brewing;
using BrewFloor.Web.Log;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Turns the cells of a row into what a form would have posted, so that both are read by the same reader.</summary>
internal sealed partial class RowReading(SheetTable table, SheetMatching matching, SheetFields fields, SiteTimes times)
{
    private const string Minute = "yyyy-MM-dd'T'HH:mm";
    private static readonly TimeOnly Noon = new(12, 0);

    /// <summary>What can't be understood is a problem under the name of its field.</summary>
    public FormReader Read(int row)
    {
        var posted = new Dictionary<string, StringValues>(StringComparer.Ordinal);
        List<(string Name, Refusal Refusal)> problems = [];
        foreach (var field in fields.All)
        {
            if (Put(posted, field, row) is { } refusal)
            {
                problems.Add((field.Name, refusal));
            }
            else if (field.IsRequired && !posted.ContainsKey(field.Name))
            {
                problems.Add((field.Name, new Refusal("missing", field.Name, "", "")));
            }
        }

        var said = new FormReader(posted, times);
        problems.ForEach(problem => said.Refuse(problem.Name, problem.Refusal));
        return said;
    }

    private Refusal? Put(Dictionary<string, StringValues> posted, Field field, int row)
    {
        var column = matching.ColumnOf(field.Name);
        if (column < 0)
        {
            foreach (var name in (string[])[field.Name, field.Name + ".unit"])
            {
                if (matching.Everywhere.TryGetValue(name, out var same) && same.Length > 0)
                {
                    posted[name] = same;
                }
            }

            return null;
        }

        var cell = table.At(row, column);
        if (cell.IsEmpty)
        {
            return null;
        }

        var read = Understood(field, cell, matching.Columns[column]);
        if (!read.Gives(out var understood))
        {
            return read.Refusal;
        }

        posted[field.Name] = understood.Text;
        if (understood.Unit is { } unit)
        {
            posted[field.Name + ".unit"] = unit;
        }

        return null;
    }

    private Outcome<Posted> Understood(Field field, SheetCell cell, ColumnMatch match) =>
        field switch
        {
            QuantityField quantity => Quantity(quantity, cell, match),
            ChoiceField choice => Choice(choice, cell),
            FlagField => Flag(cell),
            DayField => On(cell, match)
                .Select(on => new Posted(on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))),
            MomentField => On(cell, match).Select(on => new Posted(Moment(on))),
            _ => new Posted(field.Name is "headspace" or "cone-angle" ? cell.Text.TrimEnd('%', '°', ' ') : cell.Text),
        };

    // A unit in the cell itself says more than the one chosen for its column.
    private static Outcome<Posted> Quantity(QuantityField field, SheetCell cell, ColumnMatch match)
    {
        var parts = Figure().Match(cell.Text);
        var (number, written) = parts.Success
            ? (parts.Groups["number"].Value, parts.Groups["unit"].Value)
            : (cell.Text, "");
        var unit = written.Length > 0 ? SheetUnits.Of(written, field.Measure) : match.Unit;
        var known = string.Join(", ", UnitPart.SymbolsOf(field.Measure));
        return unit is not null ? new Posted(number.Trim(), unit)
            : written.Length > 0 ? new Refusal("unknown-unit", written, known, "")
            : new Refusal("sheet-no-unit", field.Name, known, "");
    }

    private static Outcome<Posted> Choice(ChoiceField field, SheetCell cell)
    {
        var plain = SheetSynonyms.Plain(cell.Text);
        var words = SheetSynonyms.Choices.GetValueOrDefault(field.Name);
        foreach (var (value, text) in field.Options)
        {
            var isIt =
                string.Equals(SheetSynonyms.Plain(value), plain, StringComparison.Ordinal)
                || string.Equals(SheetSynonyms.Plain(text), plain, StringComparison.Ordinal)
                || words?.GetValueOrDefault(value)?.Contains(plain, StringComparer.Ordinal) is true;
            if (isIt)
            {
                return new Posted(value);
            }
        }

        var known = string.Join(", ", field.Options.Select(option => option.Text));
        return new Refusal("sheet-word", cell.Text, known, "");
    }

    private static Outcome<Posted> Flag(SheetCell cell)
    {
        var plain = SheetSynonyms.Plain(cell.Text);
        return SheetSynonyms.Yes.Contains(plain) ? new Posted("true")
            : SheetSynonyms.No.Contains(plain) ? new Posted("")
            : new Refusal("sheet-yes-or-no", cell.Text, "", "");
    }

    private static Outcome<DateTime> On(SheetCell cell, ColumnMatch match) =>
        cell.On is { } on ? on
        : match.Dates is not { } order ? new Refusal("sheet-no-order", "day", "", "")
        : SheetDates.Read(cell.Text, order) is { } read ? read
        : new Refusal("sheet-no-day", cell.Text, Example(order), "");

    // A day alone is its noon; of today, where noon is still to come, its beginning.
    private string Moment(DateTime on)
    {
        var noon = DateOnly.FromDateTime(on).ToDateTime(Noon);
        var local = TimeZoneInfo.ConvertTime(times.Now, times.Zone).DateTime;
        var at = on.TimeOfDay == default && noon <= local ? noon : on;
        return at.ToString(Minute, CultureInfo.InvariantCulture);
    }

    /// <summary>How a date in this order looks.</summary>
    public static string Example(DateOrder order) =>
        order switch
        {
            DateOrder.YearMonthDay => "2026-03-14",
            DateOrder.DayMonthYear => "14.03.2026",
            _ => "03/14/2026",
        };

    private readonly record struct Posted(string Text, string? Unit = null);

    [GeneratedRegex(
        @"^(?<number>[+\-−]?[0-9][0-9.,'’\s]*?)\s*(?<unit>[^0-9.,'’\s].*)?\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.Singleline,
        1000
    )]
    private static partial Regex Figure();
}
