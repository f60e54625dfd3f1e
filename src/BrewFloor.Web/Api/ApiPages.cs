using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Api;

/// <summary>Lists come in pages: <c>{"items": […], "next": "cursor or null"}</c>, asked for with <c>limit</c> and <c>after</c>.</summary>
internal static class ApiPages
{
    public const int Most = 200;
    private const int Usual = 50;

    /// <exception cref="UnreadableException">Not 1 to 200.</exception>
    public static int Limit(HttpRequest request) =>
        request.Query["limit"].ToString() is not { Length: > 0 } text ? Usual
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var limit)
        && limit is >= 1 and <= Most
            ? limit
        : throw new UnreadableException("limit", "limit-wanted", new Number("most", Most));

    /// <summary>The cursor of the page before; null: from the start.</summary>
    public static string? After(HttpRequest request) =>
        request.Query["after"].ToString() is { Length: > 0 } after ? after : null;

    /// <exception cref="UnreadableException">Not a whole number from 0 up.</exception>
    public static long? Whole(HttpRequest request, string name) =>
        request.Query[name].ToString() is not { Length: > 0 } text ? null
        : long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number
        : throw new UnreadableException(name, "whole-number-wanted");

    /// <exception cref="UnreadableException">Not an instant with its offset.</exception>
    public static DateTimeOffset? Instant(HttpRequest request, string name) =>
        request.Query[name].ToString() is { Length: > 0 } text ? Numbers.Instant(text, name) : null;

    public static IResult Page(IEnumerable<JsonNode> items, string? next) =>
        Results.Json(new JsonObject { ["items"] = new JsonArray([.. items]), ["next"] = next });

    /// <summary>A page of what is all at hand, in the order of its keys; the key of the last item is the cursor.</summary>
    public static IResult Page<T>(HttpRequest request, IEnumerable<T> all, Func<T, string> key, Func<T, JsonNode> shown)
    {
        var (limit, after) = (Limit(request), After(request));
        var rest = all.OrderBy(key, StringComparer.Ordinal)
            .Where(item => after is null || string.CompareOrdinal(key(item), after) > 0)
            .Take(limit + 1)
            .ToArray();
        return Page(rest.Take(limit).Select(shown), rest.Length > limit ? key(rest[limit - 1]) : null);
    }
}
