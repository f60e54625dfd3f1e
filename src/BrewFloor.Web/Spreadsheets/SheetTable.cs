using System.Globalization;
using System.Text.Json;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What stands in a cell: text as it stands there, or a day (with a time) where the spreadsheet itself says that it is one.</summary>
/// <param name="Text">Trimmed; a number with a point and without an exponent.</param>
/// <param name="On">Of a true date.</param>
public readonly record struct SheetCell(string Text, DateTime? On = null)
{
    private const string Minute = "yyyy-MM-dd'T'HH:mm:ss";

    public bool IsEmpty => Text.Length == 0;

    public static SheetCell Of(DateTime on) =>
        new(on.ToString(on.TimeOfDay == default ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), on);

    public void Write(Utf8JsonWriter to)
    {
        if (On is { } on)
        {
            to.WriteStartObject();
            to.WriteString("on", on.ToString(Minute, CultureInfo.InvariantCulture));
            to.WriteEndObject();
        }
        else
        {
            to.WriteStringValue(Text);
        }
    }

    public static SheetCell Read(JsonElement from) =>
        from.ValueKind is JsonValueKind.Object
            ? Of(DateTime.ParseExact(from.GetProperty("on").GetString()!, Minute, CultureInfo.InvariantCulture))
            : new(from.GetString() ?? "");
}

/// <summary>How a file was read, where a person should know: what was guessed, and what was left out.</summary>
/// <param name="IsWestern">Not UTF-8: taken for Windows-1252.</param>
/// <param name="Sheet">Of several sheets, the one that was read.</param>
/// <param name="Separator">Of a text file.</param>
public sealed record SheetNotes(bool IsWestern, string? Sheet, string? Separator);

/// <summary>A spreadsheet as rows of cells. A row's number is its place plus one, as the spreadsheet counts them.</summary>
public sealed record SheetTable(IReadOnlyList<IReadOnlyList<SheetCell>> Rows, SheetNotes Notes)
{
    /// <summary>The line with the names of the columns: the first with more than one cell, else the first with any.</summary>
    public int Header { get; } = HeaderOf(Rows);

    public int Columns { get; } = Rows.Max(row => row.Count);

    /// <summary>The places of the rows below the header.</summary>
    public IEnumerable<int> Below => Enumerable.Range(Header + 1, Rows.Count - Header - 1);

    public SheetCell At(int row, int column) => column < Rows[row].Count ? Rows[row][column] : new("");

    public bool IsEmpty(int row) => Rows[row].All(cell => cell.IsEmpty);

    private static int HeaderOf(IReadOnlyList<IReadOnlyList<SheetCell>> rows)
    {
        var at = FirstWith(2);
        return at >= 0 ? at : Math.Max(0, FirstWith(1));

        int FirstWith(int cells) =>
            rows.Select((row, at) => (row, at))
                .Where(r => r.row.Count(cell => !cell.IsEmpty) >= cells)
                .Select(r => r.at)
                .FirstOrDefault(-1);
    }

    /// <summary>As it is kept.</summary>
    public string ToJson()
    {
        using var bytes = new MemoryStream();
        using (var to = new Utf8JsonWriter(bytes))
        {
            to.WriteStartObject();
            to.WriteBoolean("western", Notes.IsWestern);
            to.WriteString("sheet", Notes.Sheet);
            to.WriteString("separator", Notes.Separator);
            to.WriteStartArray("rows");
            foreach (var row in Rows)
            {
                to.WriteStartArray();
                foreach (var cell in row)
                {
                    cell.Write(to);
                }

                to.WriteEndArray();
            }

            to.WriteEndArray();
            to.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(bytes.ToArray());
    }

    public static SheetTable FromJson(string json)
    {
        using var read = JsonDocument.Parse(json);
        var root = read.RootElement;
        return new(
            [
                .. root.GetProperty("rows")
                    .EnumerateArray()
                    .Select(row => (IReadOnlyList<SheetCell>)[.. row.EnumerateArray().Select(SheetCell.Read)]),
            ],
            new(
                root.GetProperty("western").GetBoolean(),
                root.GetProperty("sheet").GetString(),
                root.GetProperty("separator").GetString()
            )
        );
    }
}
