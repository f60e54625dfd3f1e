using System.Text.Json.Nodes;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;

namespace BrewFloor.Web.Api;

/// <summary>Reads the entries of a request: the fields common to all, the payload of each kind, and the answers to objections.</summary>
internal sealed class EntryReader
{
    private const int Most = 1000;

    private static readonly string[] Common = ["id", "kind", "at", "sent_at", "done_by", "note", "answer"];

    private readonly List<Draft> _drafts = [];
    private readonly List<Spoken> _spoken = [];

    /// <summary>What was named by code or number, to be looked up before <see cref="Sent"/>.</summary>
    public IReadOnlyCollection<Spoken> Spoken => _spoken;

    /// <exception cref="UnreadableException">The first thing that cannot be read.</exception>
    public void Read(JsonNode? body)
    {
        switch (body)
        {
            case JsonObject many when many.ContainsKey("entries") && !many.ContainsKey("kind"):
                ReadMany(many);
                break;
            case JsonObject one:
                _drafts.Add(ReadOne(one, ""));
                break;
            default:
                throw new UnreadableException("", "body-wanted");
        }
    }

    /// <summary>What is handed to the log, once the ids of what was spoken of stand in the payloads.</summary>
    public Listed<Sent> Sent() => [.. _drafts.Select(draft => draft.Sent())];

    private void ReadMany(JsonObject body)
    {
        if (body.FirstOrDefault(field => field.Key is not "entries").Key is { } other)
        {
            throw new UnreadableException(other, "field-unknown", new Number("known", "entries"));
        }

        if (body["entries"] is not JsonArray { Count: > 0 and <= Most } entries)
        {
            throw new UnreadableException("entries", "entries-wanted", new Number("most", Most));
        }

        for (var i = 0; i < entries.Count; i++)
        {
            _drafts.Add(
                entries[i] is JsonObject one
                    ? ReadOne(one, $"entries.{i}")
                    : throw new UnreadableException($"entries.{i}", "object-wanted")
            );
        }
    }

    private Draft ReadOne(JsonObject sent, string field)
    {
        var kind = KindOf(sent, field);
        return new(kind, Numbers.Id(Required(sent, "id", field), In(field, "id")), Payload(sent, kind, field))
        {
            At = sent["at"] is { } at ? Numbers.Instant(at, In(field, "at")) : default,
            SentAt = sent["sent_at"] is { } sentAt ? Numbers.Instant(sentAt, In(field, "sent_at")) : null,
            DoneBy = Ids(sent["done_by"], In(field, "done_by")),
            Note = sent["note"] is { } note ? Numbers.Text(note, In(field, "note")) : null,
            Answer = sent["answer"] is { } answer ? AnswerIn(answer, In(field, "answer")) : Answer.None,
        };
    }

    private static string KindOf(JsonObject sent, string field)
    {
        var kind = Numbers.Text(Required(sent, "kind", field), In(field, "kind"));
        return EntryKinds.ByName.ContainsKey(kind)
            ? kind
            : throw new UnreadableException(
                In(field, "kind"),
                "kind-unknown",
                new("kind", kind),
                new("known", string.Join(", ", EntryKinds.ByName.Keys.Order(StringComparer.Ordinal)))
            );
    }

    private JsonObject Payload(JsonObject sent, string kind, string field)
    {
        var rest = new JsonObject(
            sent.Where(pair => !Common.Contains(pair.Key, StringComparer.Ordinal))
                .Select(pair => KeyValuePair.Create(pair.Key, pair.Value?.DeepClone()))
        );
        var typed = new JsonObject();
        var reader = new PayloadReader(_spoken, typed);
        if (kind is "noted" && !rest.ContainsKey("about"))
        {
            return new() { ["about"] = reader.About(rest, field) }; // "tank": "K3" says it as well
        }

        JsonObject? replacement = null;
        if (kind is "corrected")
        {
            replacement = Required(rest, "replacement", field) is JsonObject whole
                ? Replacement(whole, In(field, "replacement"))
                : throw new UnreadableException(In(field, "replacement"), "object-wanted");
            rest.Remove("replacement");
        }

        var payload = reader.Read(rest, EntryKinds.ByName[kind], field);
        if (replacement is not null)
        {
            payload["replacement"] = replacement;
        }

        if (typed.Count > 0)
        {
            payload["typed"] = typed;
        }

        return payload;
    }

    // The whole entry anew, under the id of the first.
    private JsonObject Replacement(JsonObject sent, string field)
    {
        var kind = KindOf(sent, field);
        var stored = new JsonObject { ["kind"] = kind, ["version"] = EntryJson.VersionOf(kind) };
        if (sent["at"] is { } at)
        {
            stored["at"] = Shown.Of(Numbers.Instant(at, In(field, "at")));
        }

        if (sent["note"] is { } note)
        {
            stored["note"] = Numbers.Text(note, In(field, "note"));
        }

        Listed<Guid> doneBy = Ids(sent["done_by"], In(field, "done_by"));
        if (doneBy.Count > 0)
        {
            stored["done_by"] = new JsonArray([.. doneBy.Select(id => (JsonNode)id.ToString())]);
        }

        stored["payload"] = Payload(sent, kind, field);
        return stored;
    }

    private static Answer AnswerIn(JsonNode sent, string field)
    {
        if (sent is not JsonObject answer)
        {
            throw new UnreadableException(field, "object-wanted");
        }

        string[] known = ["reason", "codes", "already_happened"];
        if (answer.FirstOrDefault(pair => !known.Contains(pair.Key, StringComparer.Ordinal)).Key is { } other)
        {
            throw new UnreadableException(
                In(field, other),
                "field-unknown",
                new Number("known", string.Join(", ", known))
            );
        }

        return new(
            answer["reason"] is { } reason ? Numbers.Text(reason, In(field, "reason")) : "",
            [.. Items(answer["codes"], In(field, "codes")).Select(code => Numbers.Text(code, In(field, "codes")))],
            answer["already_happened"] is { } happened && Numbers.Truth(happened, In(field, "already_happened"))
        );
    }

    private static Listed<Guid> Ids(JsonNode? sent, string field) =>
        [.. Items(sent, field).Select((id, i) => Numbers.Id(id, $"{field}.{i}"))];

    private static JsonArray Items(JsonNode? sent, string field) =>
        sent switch
        {
            null => [],
            JsonArray items => items,
            _ => throw new UnreadableException(field, "list-wanted"),
        };

    private static JsonNode Required(JsonObject sent, string name, string field) =>
        sent[name] ?? throw new UnreadableException(In(field, name), "field-missing");

    private static string In(string field, string name) => field.Length == 0 ? name : $"{field}.{name}";

    private sealed record Draft(string Kind, Guid Id, JsonObject Payload)
    {
        public DateTimeOffset At { get; init; }

        public DateTimeOffset? SentAt { get; init; }

        public Listed<Guid> DoneBy { get; init; }

        public string? Note { get; init; }

        public required Answer Answer { get; init; }

        public Sent Sent() =>
            new(
                EntryJson.Read(Kind, EntryJson.VersionOf(Kind), Payload.ToJsonString()) with
                {
                    Id = Id,
                    At = At,
                    SentAt = SentAt,
                    DoneBy = DoneBy,
                    Note = Note,
                },
                Answer
            );
    }
}
