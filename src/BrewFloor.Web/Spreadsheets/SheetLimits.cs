using BrewFloor.Brewing;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>How large a spreadsheet may be. All ours: far above any club's lists, far below what would hurt a small machine.</summary>
internal static class SheetLimits
{
    /// <summary>Of the file: 2 MB.</summary>
    public const int Bytes = 2 * 1024 * 1024;

    /// <summary>Of what is packed in an XLSX, all parts together: 30 MB.</summary>
    public const long Unpacked = 30 * 1024 * 1024;

    public const int Parts = 500;

    /// <summary>The header not counted.</summary>
    public const int Rows = 2_000;

    public const int Columns = 60;

    public const int Letters = 2_000;

    /// <summary>The rows with their trailing emptiness gone; refused when there are too many, or none.</summary>
    public static Outcome<SheetTable> Within(List<IReadOnlyList<SheetCell>> rows, SheetNotes notes)
    {
        while (rows.Count > 0 && rows[^1].All(cell => cell.IsEmpty))
        {
            rows.RemoveAt(rows.Count - 1);
        }

        if (rows.Count == 0)
        {
            return new Refusal("sheet-empty", "file", "", "");
        }

        var table = new SheetTable(rows, notes);
        return rows.Count - table.Header - 1 > Rows ? TooMany("sheet-rows", Rows) : table;
    }

    /// <summary>A row without the emptiness at its end; refused when it is too wide or one cell is too long.</summary>
    public static Outcome<IReadOnlyList<SheetCell>> Row(IEnumerable<SheetCell> cells, int number)
    {
        var kept = new List<SheetCell>();
        var empty = 0;
        foreach (var cell in cells)
        {
            if (cell.IsEmpty)
            {
                empty++;
                continue;
            }

            if (kept.Count + empty >= Columns)
            {
                return TooMany("sheet-columns", Columns);
            }

            if (cell.Text.Length > Letters)
            {
                return new Refusal("sheet-cell-long", "row", "", $"{Letters}", Row: number);
            }

            kept.AddRange(Enumerable.Repeat(new SheetCell(""), empty));
            kept.Add(cell);
            empty = 0;
        }

        return kept;
    }

    public static Refusal TooMany(string code, long most) => new(code, "file", "", $"{most}");
}
