using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Api;

/// <summary>Reads single values that a program sent; what cannot be read names its field.</summary>
internal static class Numbers
{
    /// <summary>No log is older, and no plan goes further: calendars can be reckoned with on both sides.</summary>
    private const int FirstYear = 1970;

    private const int LastYear = 2199;

    public static double Double(JsonNode? sent, string field) =>
        sent is JsonValue value
        && value.GetValueKind() is JsonValueKind.Number
        && value.TryGetValue<double>(out var number)
        && double.IsFinite(number)
            ? number
            : throw new UnreadableException(field, "number-wanted");

    public static int Whole(JsonNode? sent, string field) =>
        sent is JsonValue value && value.TryGetValue<int>(out var number)
            ? number
            : throw new UnreadableException(field, "whole-number-wanted");

    public static bool Truth(JsonNode? sent, string field) =>
        sent is JsonValue value && value.TryGetValue<bool>(out var truth)
            ? truth
            : throw new UnreadableException(field, "truth-wanted");

    /// <summary>Without the character 0, which no database keeps, and without halves of characters.</summary>
    public static string Text(JsonNode? sent, string field)
    {
        try
        {
            return
                sent is JsonValue value
                && value.GetValueKind() is JsonValueKind.String
                && value.TryGetValue<string>(out var text)
                && !text.Contains('\0', StringComparison.Ordinal)
                ? text
                : throw new UnreadableException(field, "text-wanted");
        }
        catch (InvalidOperationException) // half of a surrogate pair
        {
            throw new UnreadableException(field, "text-wanted");
        }
    }

    public static Guid Id(JsonNode? sent, string field) =>
        Guid.TryParseExact(Text(sent, field), "D", out var id) && id != Guid.Empty
            ? id
            : throw new UnreadableException(field, "id-wanted");

    /// <summary>An instant with its offset: a time without one would be the server's own.</summary>
    public static DateTimeOffset Instant(JsonNode? sent, string field) => Instant(Text(sent, field), field);

    /// <inheritdoc cref="Instant(JsonNode?, string)"/>
    public static DateTimeOffset Instant(string text, string field) =>
        DateTimeOffset.TryParseExact(
            text,
            ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK"],
            CultureInfo.InvariantCulture,
            DateTimeStyles.RoundtripKind,
            out var at
        )
        && (text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > text.IndexOf('T', StringComparison.Ordinal))
        && at.Year is >= FirstYear and <= LastYear
            ? at.ToUniversalTime()
            : throw new UnreadableException(field, "instant-wanted", Years());

    public static DateOnly Day(JsonNode? sent, string field) =>
        DateOnly.TryParseExact(Text(sent, field), "O", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
        && day.Year is >= FirstYear and <= LastYear
            ? day
            : throw new UnreadableException(field, "day-wanted", Years());

    /// <summary>One of the names of an enum, and nothing else that the framework would take for one.</summary>
    public static string Choice(JsonNode? sent, Type type, string field)
    {
        var names = ChoicesOf(type);
        var text = Text(sent, field);
        return names.Contains(text, StringComparer.Ordinal)
            ? text
            : throw new UnreadableException(
                field,
                "choice-unknown",
                new("choice", text),
                new("known", string.Join(", ", names))
            );
    }

    public static string[] ChoicesOf(Type type) =>
        [.. Enum.GetNames(type).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)];

    private static Number[] Years() => [new("from", FirstYear), new("to", LastYear)];
}
