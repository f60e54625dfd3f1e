using System.Globalization;
using BrewFloor.Brewing;
using CsvHelper;
using CsvHelper.Configuration;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Text with separators, as spreadsheets save it: RFC 4180 with comma, semicolon or tab.</summary>
internal static class CsvSheet
{
    private const string Says = "sep="; // a first line that some spreadsheets write for themselves
    private const int LinesLookedAt = 20;
    private static readonly char[] Separators = [';', '\t', ','];

    public static Outcome<SheetTable> Read(string text, bool isWestern)
    {
        var said = text.StartsWith(Says, StringComparison.OrdinalIgnoreCase) && text.Length > Says.Length;
        var separator = said ? text[Says.Length] : SeparatorOf(text);
        using var reader = new StringReader(text);
        using var parser = new CsvParser(
            reader,
            new CsvConfiguration(CultureInfo.InvariantCulture)
            {
                Delimiter = separator.ToString(),
                BadDataFound = null, // a stray quotation mark is a letter like any other
                IgnoreBlankLines = false,
            }
        );
        var rows = new List<IReadOnlyList<SheetCell>>();
        while (parser.Read())
        {
            var cells = rows.Count == 0 && said ? [] : (parser.Record ?? []).Select(cell => new SheetCell(cell.Trim()));
            var row = SheetLimits.Row(cells, rows.Count + 1);
            if (!row.Gives(out var kept))
            {
                return row.Refusal!;
            }

            rows.Add(kept);
            if (rows.Count > 2 * SheetLimits.Rows)
            {
                return SheetLimits.TooMany("sheet-rows", SheetLimits.Rows);
            }
        }

        return SheetLimits.Within(rows, new(isWestern, Sheet: null, separator == '\t' ? "tab" : separator.ToString()));
    }

    // The one that stands as often in most lines; decimal commas stand in some cells of some lines.
    private static char SeparatorOf(string text)
    {
        string[] lines =
        [
            .. text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries).Take(LinesLookedAt).Select(Unquoted),
        ];
        return Separators.MaxBy(separator => Steadiness(lines, separator));
    }

    private static int Steadiness(string[] lines, char separator)
    {
        var counts = lines.Select(line => line.Count(c => c == separator)).Where(count => count > 0).ToArray();
        return counts.Length == 0 ? 0 : counts.CountBy(count => count).Max(same => same.Value) * 100 + counts.Min();
    }

    private static string Unquoted(string line)
    {
        var parts = line.Split('"');
        return string.Concat(parts.Where((_, at) => at % 2 == 0));
    }
}
