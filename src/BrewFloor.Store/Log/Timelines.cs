using System.Text.Json;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>What some subjects' timelines hold from a moment on, and how each stood just before it.</summary>
internal sealed class Timelines
{
    /// <summary>Everything that is known today.</summary>
    public const long Today = long.MaxValue;

    private readonly Dictionary<Subject, State> _before = [];
    private readonly Dictionary<Subject, int> _counts = [];
    private readonly Dictionary<Subject, DateTimeOffset> _lastBefore = [];
    private readonly Dictionary<Guid, Line> _lines = [];

    public IReadOnlyDictionary<Subject, State> Before => _before;

    public IReadOnlyDictionary<Subject, int> Counts => _counts;

    public IReadOnlyDictionary<Subject, DateTimeOffset> LastBefore => _lastBefore;

    /// <summary>By first id; in no order.</summary>
    public IReadOnlyDictionary<Guid, Line> Lines => _lines;

    // The snapshot to begin with: before the moment, of this fold, and made by what was known then.
    private const string Snapshots = """
        SELECT w.kind, w.id, p.at, p.seq, p.entries, p.state
        FROM unnest($1::uuid[], $2::text[]) AS w(id, kind)
        JOIN LATERAL (
            SELECT at, seq, entries, state FROM snapshots
            WHERE subject_id = w.id AND at < $3 AND fold_version = $4 AND made <= $5
            ORDER BY at DESC, seq DESC LIMIT 1
        ) p ON true
        """;

    private const string LinesSince = """
        SELECT w.kind, w.id, s.at, s.seq, s.entry_id, s.words_id, e.kind, e.version, e.payload, e.note, e.done_by,
               e.done_anyway, h.handed
        FROM unnest($1::uuid[], $2::text[]) AS w(id, kind)
        LEFT JOIN LATERAL (
            SELECT at, seq FROM snapshots
            WHERE subject_id = w.id AND at < $3 AND fold_version = $4 AND made <= $5
            ORDER BY at DESC, seq DESC LIMIT 1
        ) p ON true
        JOIN entry_subjects s ON s.subject_id = w.id AND s.since <= $5 AND (s.until IS NULL OR s.until > $5)
            AND (s.at, s.seq) > (coalesce(p.at, '-infinity'), coalesce(p.seq, 0)) AND s.at <= $6
        JOIN entries e ON e.id = s.words_id
        LEFT JOIN LATERAL (
            SELECT jsonb_agg(jsonb_build_object('taker', h.taker_id, 'kind', h.kind, 'value', h.value)
                             ORDER BY h.place) AS handed
            FROM handed_over h
            WHERE h.entry_id = s.entry_id AND h.since <= $5 AND (h.until IS NULL OR h.until > $5)
        ) h ON true
        ORDER BY s.at, s.seq
        """;

    /// <param name="subjects">Whose.</param>
    /// <param name="from">The first moment that counts as "from then on".</param>
    /// <param name="to">The last moment of interest, inclusive.</param>
    /// <param name="known">As it was known at this seq; <see cref="Today"/> for now.</param>
    public static async Task<Timelines> ReadAsync(
        NpgsqlConnection connection,
        IReadOnlyCollection<Subject> subjects,
        DateTimeOffset from,
        DateTimeOffset to,
        long known,
        CancellationToken stop
    )
    {
        var timelines = new Timelines();
        foreach (var subject in subjects)
        {
            timelines._before[subject] = Things.Blank(subject);
        }

        Guid[] ids = [.. subjects.Select(s => s.Id)];
        string[] kinds = [.. subjects.Select(s => SubjectKinds.NameOf(s.Kind))];
        await using var batch = connection.CreateBatch();
        batch.Add(Snapshots, ids, kinds, from, StateRow.CurrentFold, known);
        batch.Add(LinesSince, ids, kinds, from, StateRow.CurrentFold, known, to);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            var subject = SubjectOf(reader);
            timelines._lastBefore[subject] = reader.At(2);
            timelines._counts[subject] = reader.GetInt32(4);
            timelines._before[subject] = Things.ReadState(subject.Kind, reader.GetString(5));
        }

        await reader.NextResultAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            timelines.Take(SubjectOf(reader), LineOf(reader), from);
        }

        return timelines;
    }

    /// <summary>The words of stored entries, to stand again at their old places.</summary>
    public static async Task<Dictionary<Guid, LogEntry>> WordsAsync(
        NpgsqlConnection connection,
        Guid[] ids,
        CancellationToken stop
    )
    {
        const string Question =
            "SELECT id, kind, version, payload, note, done_by, done_anyway FROM entries WHERE id = ANY($1)";
        var words = new Dictionary<Guid, LogEntry>();
        await using var batch = connection.CreateBatch();
        batch.Add(Question, ids);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            words.Add(reader.GetGuid(0), Words(reader, kind: 1));
        }

        return words;
    }

    // Kind, version, payload, note, done_by, done_anyway, from a column on. A correction's words are those of its replacement.
    private static LogEntry Words(NpgsqlDataReader reader, int kind)
    {
        var entry = EntryJson.Read(reader.GetString(kind), reader.GetInt32(kind + 1), reader.GetString(kind + 2));
        entry = entry with
        {
            Note = reader.TextOrNull(kind + 3),
            DoneBy = [.. reader.GetFieldValue<Guid[]>(kind + 4)],
            DoneAnyway = [.. reader.GetFieldValue<string[]>(kind + 5)],
        };
        return entry;
    }

    private static Subject SubjectOf(NpgsqlDataReader reader) =>
        new(SubjectKinds.Of(reader.GetString(0)), reader.GetGuid(1));

    private static Line LineOf(NpgsqlDataReader reader)
    {
        var (at, first, words) = (reader.At(2), reader.GetGuid(4), reader.GetGuid(5));
        var entry = Standing(Words(reader, kind: 6), first, words) with { At = at };
        return new(entry, reader.GetInt64(3), words, HandedIn(reader.TextOrNull(12), entry));
    }

    /// <summary>At, seq, first id, words id, kind, version, payload, note, done_by, done_anyway; what was handed over is not asked.</summary>
    public static Line WholeLine(NpgsqlDataReader reader)
    {
        var (at, first, words) = (reader.At(0), reader.GetGuid(2), reader.GetGuid(3));
        return new(Standing(Words(reader, kind: 4), first, words) with { At = at }, reader.GetInt64(1), words, []);
    }

    /// <summary>Under its first id: an entry's own words, or the replacement that a correction carries.</summary>
    /// <remarks>What was done anyway is the replacement's: the correction itself is a mark in the log and changes no state.</remarks>
    public static LogEntry Standing(LogEntry words, Guid first, Guid wordsId) =>
        words switch
        {
            Corrected corrected when first != wordsId => corrected.Standing with { DoneAnyway = corrected.DoneAnyway },
            _ => words with { Id = first },
        };

    private static Listed<Handed> HandedIn(string? json, LogEntry entry)
    {
        if (json is null)
        {
            return [];
        }

        using var values = JsonDocument.Parse(json);
        return
        [
            .. values
                .RootElement.EnumerateArray()
                .Select(value => new Handed(
                    entry.Subjects.First(s => s.Id == value.GetProperty("taker").GetGuid()),
                    HandedOverKinds.Read(
                        value.GetProperty("kind").GetString()!,
                        value.GetProperty("value").GetRawText()
                    )
                )),
        ];
    }

    private void Take(Subject subject, Line line, DateTimeOffset from)
    {
        if (line.Entry.At >= from)
        {
            _lines[line.Entry.Id] = line;
            return;
        }

        _before[subject] = line.After(_before[subject], line.Handed);
        _counts[subject] = _counts.GetValueOrDefault(subject) + 1;
        _lastBefore[subject] = line.Entry.At;
    }
}

/// <summary>What is handed over, by stored name. A cache like the states: folded anew with a new fold version.</summary>
internal static class HandedOverKinds
{
    private static readonly Dictionary<string, Type> ByName = typeof(HandedOver)
        .Assembly.GetTypes()
        .Where(type => type.IsSubclassOf(typeof(HandedOver)) && !type.IsAbstract)
        .ToDictionary(NameOf, StringComparer.Ordinal);

    public static string NameOf(HandedOver value) => NameOf(value.GetType());

    public static HandedOver Read(string name, string json) =>
        (HandedOver)JsonSerializer.Deserialize(json, ByName[name], FloorJson.Options)!;

    private static string NameOf(Type type) => JsonNamingPolicy.KebabCaseLower.ConvertName(type.Name);
}
