using System.Text.Json;

namespace BrewFloor.Store.Backups;

/// <summary>A row for a spreadsheet (RFC 4180), in which no text becomes a formula.</summary>
internal static class CsvLine
{
    private const string BeginsFormula = "=+-@\t\r\n";
    private const string MustBeQuoted = "\",\r\n";

    public static string Of(IEnumerable<string> names) => string.Join(',', names.Select(Cell));

    /// <param name="row">An object with the cells.</param>
    public static string Of(JsonElement row) =>
        string.Join(',', row.EnumerateObject().Select(cell => Shown(cell.Value)));

    private static string Shown(JsonElement value) =>
        value.ValueKind switch
        {
            JsonValueKind.Null => "",
            JsonValueKind.Number or JsonValueKind.True or JsonValueKind.False => value.GetRawText(), // -5 is a number
            JsonValueKind.String => Cell(value.GetString()!),
            _ => Cell(value.GetRawText()),
        };

    // What a person typed may begin like a formula: with a mark before it a spreadsheet shows it and does nothing.
    private static string Cell(string text)
    {
        var shown = text.Length > 0 && BeginsFormula.Contains(text[0], StringComparison.Ordinal) ? $"'{text}" : text;
        return shown.AsSpan().IndexOfAny(MustBeQuoted) < 0
            ? shown
            : $"\"{shown.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
