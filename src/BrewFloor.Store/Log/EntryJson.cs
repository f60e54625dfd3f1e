using System.Collections.Frozen;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;

namespace BrewFloor.Store.Log;

/// <summary>Entries as they are stored: what every kind has in columns, the rest as the payload.</summary>
public static class EntryJson
{
    /// <summary>Raised when what is hashed, or how, changes: an older hash is then compared in its own way.</summary>
    public const short HashVersion = 1;

    // A kind's first upcaster turns version 1 into 2, and so on. Stored bytes are never rewritten.
    private static readonly FrozenDictionary<string, Func<JsonObject, JsonObject>[]> Upcasters = new Dictionary<
        string,
        Func<JsonObject, JsonObject>[]
    >(StringComparer.Ordinal).ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The version in which a kind is written today.</summary>
    public static int VersionOf(string kind) => 1 + (Upcasters.TryGetValue(kind, out var steps) ? steps.Length : 0);

    public static string PayloadOf(LogEntry entry) => FloorJson.Of(entry);

    /// <summary>The entry without what stands in columns.</summary>
    /// <exception cref="JsonException">The payload isn't one of this kind.</exception>
    public static LogEntry Read(string kind, int version, string payload)
    {
        var type = EntryKinds.ByName[kind];
        var entry =
            version == VersionOf(kind)
                ? JsonSerializer.Deserialize(payload, type, FloorJson.Options)
                : Upcast(kind, version, payload).Deserialize(type, FloorJson.Options);
        return entry switch
        {
            Corrected corrected => corrected with { Replacement = corrected.Replacement with { Id = corrected.Entry } },
            LogEntry other => other,
            _ => throw new JsonException($"No {kind} in it."),
        };
    }

    /// <summary>Of the fields as sent and of the author, over their RFC 8785 JSON: what decides whether an id comes again.</summary>
    public static byte[] Hash(LogEntry asSent, Author author) =>
        SHA256.HashData(CanonicalJson.Utf8(Sent(asSent, author)));

    private static JsonObject Sent(LogEntry entry, Author author)
    {
        var kind = EntryKinds.NameOf(entry);
        var sent = new JsonObject
        {
            ["author"] = author.Id.ToString(),
            ["is_token"] = author.IsToken,
            ["id"] = entry.Id.ToString(),
            ["kind"] = kind,
            ["payload"] = JsonNode.Parse(PayloadOf(entry)),
        };
        if (entry.SentAt is { } sentAt)
        {
            sent["sent_at"] = InstantJson.Text(sentAt);
        }

        foreach (var (key, value) in ReplacementJson.Columns(entry))
        {
            sent[key] = value;
        }

        return sent;
    }

    private static JsonObject Upcast(string kind, int version, string payload) =>
        Upcasters[kind].Skip(version - 1).Aggregate(JsonNode.Parse(payload)!.AsObject(), (json, step) => step(json));
}

/// <summary>The whole entry that a correction carries: kind, version, the common fields and its payload.</summary>
internal sealed class ReplacementJson : JsonConverter<LogEntry>
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert == typeof(LogEntry);

    /// <summary>The common fields that are there.</summary>
    public static IEnumerable<KeyValuePair<string, JsonNode?>> Columns(LogEntry entry)
    {
        if (entry.At != default)
        {
            yield return new("at", InstantJson.Text(entry.At));
        }

        if (entry.DoneBy is not [])
        {
            yield return new("done_by", new JsonArray([.. entry.DoneBy.Select(id => (JsonNode)id.ToString())]));
        }

        if (entry.Note is { } note)
        {
            yield return new("note", note);
        }
    }

    public override LogEntry Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var json = JsonNode.Parse(ref reader)!.AsObject();
        var entry = EntryJson.Read(
            json["kind"]!.GetValue<string>(),
            json["version"]!.GetValue<int>(),
            json["payload"]!.ToJsonString()
        );
        return entry with
        {
            At = json["at"]?.Deserialize<DateTimeOffset>(options) ?? default,
            DoneBy = json["done_by"]?.Deserialize<Listed<Guid>>(options) ?? default,
            Note = json["note"]?.GetValue<string>(),
        };
    }

    public override void Write(Utf8JsonWriter writer, LogEntry value, JsonSerializerOptions options)
    {
        var kind = EntryKinds.NameOf(value);
        var json = new JsonObject { ["kind"] = kind, ["version"] = EntryJson.VersionOf(kind) };
        foreach (var (key, column) in Columns(value))
        {
            json[key] = column;
        }

        json["payload"] = JsonNode.Parse(EntryJson.PayloadOf(value));
        json.WriteTo(writer, options);
    }
}
