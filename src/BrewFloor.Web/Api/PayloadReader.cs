using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Api;

/// <summary>A tank by its code, or a batch, culture or item by its number; its id is written into the payload once it is known.</summary>
internal sealed record Spoken(SubjectKind Kind, string? Code, int Number, JsonObject Into, string Key, string Field);

/// <summary>Turns what a program sent into the stored form of a record, field by field; what isn't a field of it is refused.</summary>
/// <param name="spoken">Collects what was named by code or number.</param>
/// <param name="typed">Collects how each quantity was said.</param>
internal sealed class PayloadReader(List<Spoken> spoken, JsonObject typed)
{
    private static readonly SubjectKind?[] Subjects =
    [
        SubjectKind.Tank,
        SubjectKind.Batch,
        SubjectKind.Culture,
        SubjectKind.Item,
    ];

    // An entry that brings what it is about needn't name it twice.
    private static readonly Dictionary<string, string> Bringing = new(StringComparer.Ordinal)
    {
        ["batch_id"] = "new_batch",
        ["item_id"] = "new_item",
    };

    /// <param name="field">Where the record stands, for sentences.</param>
    /// <param name="path">Where it stands in the payload, for what was typed.</param>
    public JsonObject Read(JsonObject sent, Type type, string field, string path = "")
    {
        var left = sent.Select(pair => pair.Key).ToHashSet(StringComparer.Ordinal);
        var stored = new JsonObject();
        // The entry within a correction is read by whoever reads entries.
        foreach (var wanted in ApiFields.Of(type).Where(field => field.Type != typeof(LogEntry)))
        {
            Read(sent, wanted, stored, left, field, path);
        }

        if (left.Count > 0)
        {
            throw new UnreadableException(
                Join(field, left.First()),
                "field-unknown",
                new Number("known", string.Join(", ", ApiFields.Of(type).Select(known => known.Name)))
            );
        }

        return stored;
    }

    private void Read(
        JsonObject sent,
        ApiField wanted,
        JsonObject stored,
        HashSet<string> left,
        string field,
        string path
    )
    {
        var here = Join(field, wanted.Name);
        if (left.Remove(wanted.Name) && sent[wanted.Name] is { } value)
        {
            stored[wanted.Stored] = Value(value, wanted.Type, here, Join(path, wanted.Stored));
        }
        else if (wanted.PointsTo is { } kind && left.Remove(wanted.Spoken) && sent[wanted.Spoken] is { } name)
        {
            stored[wanted.Stored] = null; // its place in the order of fields
            spoken.Add(Name(kind, name, stored, wanted.Stored, Join(field, wanted.Spoken)));
        }
        else if (Bringing.GetValueOrDefault(wanted.Stored) is { } bringing && sent[bringing]?["id"] is { } brought)
        {
            stored[wanted.Stored] = Numbers.Id(brought, Join(field, bringing + ".id")).ToString();
        }
        else if (wanted.IsRequired)
        {
            throw new UnreadableException(wanted.PointsTo is null ? here : Join(field, wanted.Spoken), "field-missing");
        }
    }

    private JsonNode Value(JsonNode sent, Type type, string field, string path)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (ApiQuantities.Are(bare))
        {
            var (stored, text) = ApiQuantities.Read(sent, bare, field);
            typed[path] = text;
            return stored;
        }

        return bare.IsEnum ? Numbers.Choice(sent, bare, field)
            : Lists.Are(bare) ? Items(sent, Lists.ItemOf(bare), field, path)
            : bare == typeof(Subject) && sent is not JsonObject { Count: 2 } ? About(sent, field)
            : ApiFields.AreIn(bare)
                ? sent is JsonObject inner ? Read(inner, bare, field, path)
                    : throw new UnreadableException(field, "object-wanted")
            : Single(sent, bare, field);
    }

    private static JsonNode Single(JsonNode sent, Type bare, string field) =>
        bare == typeof(Guid) ? Numbers.Id(sent, field).ToString()
        : bare == typeof(bool) ? Numbers.Truth(sent, field)
        : bare == typeof(int) ? Numbers.Whole(sent, field)
        : bare == typeof(double) ? Numbers.Double(sent, field)
        : bare == typeof(DateTimeOffset) ? Shown.Of(Numbers.Instant(sent, field))!
        : bare == typeof(DateOnly) ? Numbers.Day(sent, field).ToString("O", CultureInfo.InvariantCulture)
        : bare == typeof(string) ? Numbers.Text(sent, field)
        : throw new NotSupportedException($"No way to read a {bare.Name} from a program.");

    private JsonArray Items(JsonNode sent, Type item, string field, string path) =>
        sent is JsonArray items
            ?
            [
                .. items.Select(
                    (one, i) =>
                        one is null
                            ? throw new UnreadableException($"{field}.{i}", "field-missing")
                            : Value(one, item, $"{field}.{i}", $"{path}.{i}")
                ),
            ]
            : throw new UnreadableException(field, "list-wanted");

    /// <summary>What a note is about: <c>{"tank": "K3"}</c>, <c>{"batch": 118}</c>, <c>{"culture_id": …}</c>.</summary>
    public JsonObject About(JsonNode sent, string field)
    {
        if (sent is not JsonObject { Count: 1 } about || about.First().Value is not { } value)
        {
            throw new UnreadableException(field, "about-wanted");
        }

        var key = about.First().Key;
        var named = key.EndsWith("_id", StringComparison.Ordinal) ? key[..^3] : key;
        var kind =
            Array.Find(Subjects, kind => string.Equals(Shown.Of(kind!), named, StringComparison.Ordinal))
            ?? throw new UnreadableException(Join(field, key), "about-wanted");

        var stored = new JsonObject { ["kind"] = named, ["id"] = null };
        if (named.Length < key.Length)
        {
            stored["id"] = Numbers.Id(value, Join(field, key)).ToString();
        }
        else
        {
            spoken.Add(Name(kind, value, stored, "id", Join(field, key)));
        }

        return stored;
    }

    private static Spoken Name(SubjectKind kind, JsonNode sent, JsonObject into, string key, string field) =>
        kind is SubjectKind.Tank
            ? new(kind, Numbers.Text(sent, field), 0, into, key, field)
            : new(kind, Code: null, Numbers.Whole(sent, field), into, key, field);

    private static string Join(string left, string right) => left.Length == 0 ? right : $"{left}.{right}";
}
