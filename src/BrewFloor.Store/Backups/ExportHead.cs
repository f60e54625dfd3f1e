using System.Text.Json;

namespace BrewFloor.Store.Backups;

/// <summary>What an export says of itself, in a file of its own.</summary>
/// <param name="Format">Of the files.</param>
/// <param name="App">The version of BrewFloor that made it.</param>
/// <param name="Schema">The newest migration of its tables.</param>
/// <param name="Made">The moment it holds.</param>
/// <param name="Tables">Their rows, counted and hashed.</param>
/// <param name="Folds">What the log must fold to.</param>
internal sealed record ExportHead(int Format, string App, string Schema, DateTimeOffset Made, Tally Tables, Tally Folds)
{
    public const int CurrentFormat = 1;
    public const string File = "export.json";

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    public string Text() => JsonSerializer.Serialize(this, Json) + "\n";

    /// <returns><see langword="null"/>: it cannot be read.</returns>
    public static ExportHead? Of(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<ExportHead>(text, Json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
