using System.Text.Json.Nodes;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Api;

/// <summary>Records of the floor as programs see them: as they are stored, but every quantity with its unit.</summary>
internal static class Shown
{
    private static readonly (string Ending, string Unit)[] Endings = [("_mm", "mm"), ("_l", "L"), ("_deg", "deg")];

    public static JsonObject Of(object record) =>
        (JsonObject)Of(JsonNode.Parse(FloorJson.Of(record)), record.GetType())!;

    /// <summary>An instant as it is stored.</summary>
    public static JsonNode? Of(DateTimeOffset? at) => at is { } moment ? JsonNode.Parse(FloorJson.Of(moment)) : null;

    public static string Of(Enum value) =>
        System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    public static JsonArray Of<T>(IEnumerable<T> items)
        where T : notnull => [.. items.Select(item => Of(JsonNode.Parse(FloorJson.Of(item)), item.GetType()))];

    private static JsonNode? Of(JsonNode? stored, Type type)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        return stored switch
        {
            null => null,
            _ when ApiQuantities.Are(bare) => ApiQuantities.Shown(stored, bare),
            JsonArray items when Lists.Are(bare) => new JsonArray([
                .. items.Select(item => Of(item, Lists.ItemOf(bare))),
            ]),
            JsonObject number when bare == typeof(Number) => Named(number),
            JsonObject entry when bare == typeof(LogEntry) => Entry(entry),
            _ when bare == typeof(IStrapping) => ByEndings(stored),
            JsonObject record when ApiFields.AreIn(bare) => Fields(record, bare),
            _ => stored.DeepClone(),
        };
    }

    private static JsonObject Fields(JsonObject stored, Type type)
    {
        var shown = new JsonObject();
        foreach (var field in ApiFields.Of(type))
        {
            if (stored[field.Stored] is { } value)
            {
                shown[field.Name] = Of(value, field.Type);
            }
        }

        return shown;
    }

    private static JsonObject Named(JsonObject number)
    {
        var read = FloorJson.Read<Number>(number.ToJsonString());
        return new() { ["name"] = read.Name, ["value"] = ApiQuantities.Shown(read) };
    }

    // A strapping is stored in a way of its own; there too the key ends in the unit.
    private static JsonNode? ByEndings(JsonNode? stored) =>
        stored switch
        {
            JsonArray items => new JsonArray([.. items.Select(ByEndings)]),
            JsonObject fields => new JsonObject(
                fields.Select(field =>
                    Array.Find(Endings, e => field.Key.EndsWith(e.Ending, StringComparison.Ordinal))
                        is ({ } ending, { } unit)
                        ? KeyValuePair.Create<string, JsonNode?>(
                            field.Key[..^ending.Length],
                            ApiQuantities.Shown(field.Value!.GetValue<double>(), unit)
                        )
                        : KeyValuePair.Create(field.Key, ByEndings(field.Value))
                )
            ),
            _ => stored?.DeepClone(),
        };

    // The whole entry that a correction carries.
    private static JsonObject Entry(JsonObject stored)
    {
        var kind = stored["kind"]!.GetValue<string>();
        var shown = new JsonObject { ["kind"] = kind };
        foreach (var column in (string[])["at", "done_by", "note"])
        {
            if (stored[column] is { } value)
            {
                shown[column] = value.DeepClone();
            }
        }

        foreach (var (key, value) in Fields(stored["payload"]!.AsObject(), EntryKinds.ByName[kind]))
        {
            shown[key] = value?.DeepClone();
        }

        return shown;
    }
}
