using System.Text.Json;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What a column means.</summary>
/// <param name="Field">The name of the field; null: the column is left out.</param>
/// <param name="Unit">The symbol; null: none, or none chosen yet.</param>
/// <param name="Dates">Of dates that are written as text.</param>
public sealed record ColumnMatch(string? Field, string? Unit = null, DateOrder? Dates = null)
{
    public static readonly ColumnMatch None = new(Field: null);
}

/// <summary>What the columns mean, one after the other, and what is the same for every row.</summary>
/// <param name="Everywhere">By the name of a field that no column has; a quantity's unit under <c>NAME.unit</c>.</param>
public sealed record SheetMatching(IReadOnlyList<ColumnMatch> Columns, IReadOnlyDictionary<string, string> Everywhere)
{
    /// <summary>The column of a field; -1: none has it.</summary>
    public int ColumnOf(string field) =>
        Columns
            .Select((column, at) => (column, at))
            .Where(c => string.Equals(c.column.Field, field, StringComparison.Ordinal))
            .Select(c => c.at)
            .FirstOrDefault(-1);

    public string ToJson() => JsonSerializer.Serialize(this);

    public static SheetMatching FromJson(string json) => JsonSerializer.Deserialize<SheetMatching>(json)!;
}
