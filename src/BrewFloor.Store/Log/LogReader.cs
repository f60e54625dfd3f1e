using System.Globalization;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Reads the log's lines, with who wrote them and what the floor said. Names are asked once, for all of them.</summary>
public sealed class LogReader(NpgsqlDataSource database)
{
    private const string Line = """
        SELECT s.at, s.seq, s.entry_id, s.words_id, w.kind, w.version, w.payload, w.note, w.done_by, w.done_anyway,
               e.recorded, e.logged_by, e.by_token, w.objections, w.reason, w.answered, w.already_happened, w.cautions_shown,
               w.skew_ms, (SELECT id FROM entries WHERE seq = s.until),
               s.until IS NOT NULL AND EXISTS (SELECT FROM entry_subjects o WHERE o.entry_id = s.entry_id AND o.until IS NULL),
               (SELECT jsonb_agg(a.objection) FROM seen_afterwards a WHERE a.entry_id = s.entry_id)
        """;

    // Of each entry the last place it had on this timeline: where it stands, or stood until it was struck or moved.
    private const string IsLastPlace = """
        NOT EXISTS (
            SELECT FROM entry_subjects n
            WHERE n.entry_id = s.entry_id AND n.subject_id = s.subject_id AND n.since > s.since
        )
        """;

    private const string OfSubject = $"""
        {Line}
        FROM entry_subjects s JOIN entries e ON e.id = s.entry_id JOIN entries w ON w.id = s.words_id
        WHERE {IsLastPlace}
        """;

    // Once each, by any one of its subjects; an entry without a subject cannot be. Walked along the numbers, however long the log.
    private const string InOrder = $"""
        {Line}
        FROM entries e
        CROSS JOIN LATERAL (
            SELECT * FROM entry_subjects s WHERE s.entry_id = e.id AND {IsLastPlace} ORDER BY s.subject_id LIMIT 1
        ) s
        JOIN entries w ON w.id = s.words_id
        WHERE s.seq = e.seq AND e.seq > $1
        """;

    internal const string ThingNames = """
        SELECT id, code FROM tanks UNION ALL SELECT id, thing->>'strain' FROM cultures
        """;

    internal const string Names = "SELECT id, name FROM people UNION ALL SELECT id, name FROM tokens";

    /// <summary>A subject's timeline, the latest first; corrections and strikes are lines of it too.</summary>
    /// <param name="after">The <see cref="Page{T}.Next"/> of the page before.</param>
    public Task<Page<LogLine>> TimelineAsync(Subject subject, string? after, int limit, CancellationToken stop)
    {
        var (at, seq) = Cursor.Read(after);
        return PageAsync(
            $"{OfSubject} AND s.subject_id = $1 AND (s.at, s.seq) < ($2, $3) ORDER BY s.at DESC, s.seq DESC LIMIT {limit + 1}",
            limit,
            last => Cursor.Text(last.Entry.At, last.Seq),
            stop,
            subject.Id,
            at,
            seq
        );
    }

    /// <summary>The log in commit order, from a seq on; a reader that remembers the last seq it saw misses nothing.</summary>
    /// <param name="since">The last seq already seen; 0: from the start.</param>
    /// <param name="about">Only about this subject; null: all.</param>
    public Task<Page<LogLine>> SinceAsync(long since, Subject? about, int limit, CancellationToken stop)
    {
        var asked = about is { } subject ? $"{OfSubject} AND e.seq > $1 AND s.subject_id = '{subject.Id}'" : InOrder;
        return PageAsync(
            $"{asked} ORDER BY e.seq LIMIT {limit + 1}",
            limit,
            last => last.Seq.ToString(CultureInfo.InvariantCulture),
            stop,
            since
        );
    }

    /// <summary>One entry, by its first id.</summary>
    /// <returns>Null: there is none.</returns>
    public async Task<LogLine?> EntryAsync(Guid id, CancellationToken stop)
    {
        var page = await PageAsync($"{OfSubject} AND s.entry_id = $1 LIMIT 1", 1, _ => "", stop, id);
        return page.Items is [var line] ? line : null;
    }

    /// <summary>The newest seq; 0 when the log is empty.</summary>
    public async Task<long> LastSeqAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT coalesce(max(seq), 0) FROM entries");
        return await batch.ExecuteScalarAsync(stop) is long seq ? seq : 0;
    }

    /// <summary>Names of people and of tokens, by id.</summary>
    public Task<IReadOnlyDictionary<Guid, string>> NamesAsync(CancellationToken stop) => NamesAsync(Names, stop);

    /// <summary>The codes of all tanks and the strains of all cultures.</summary>
    public Task<IReadOnlyDictionary<Guid, string>> ThingNamesAsync(CancellationToken stop) =>
        NamesAsync(ThingNames, stop);

    private async Task<IReadOnlyDictionary<Guid, string>> NamesAsync(string question, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(question);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var names = new Dictionary<Guid, string>();
        while (await reader.ReadAsync(stop))
        {
            names.Add(reader.GetGuid(0), reader.GetString(1));
        }

        return names;
    }

    private async Task<Page<LogLine>> PageAsync(
        string question,
        int limit,
        Func<LogLine, string> next,
        CancellationToken stop,
        params object[] values
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(question, values);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var lines = new List<LogLine>();
        while (await reader.ReadAsync(stop))
        {
            lines.Add(Read(reader));
        }

        return new([.. lines.Take(limit)], lines.Count > limit ? next(lines[limit - 1]) : null);
    }

    private static LogLine Read(NpgsqlDataReader reader)
    {
        var line = Timelines.WholeLine(reader);
        var mendedBy = reader.OrNull<Guid>(19);
        return new(line.Entry, line.Seq, reader.At(10), reader.GetGuid(11), reader.GetBoolean(12))
        {
            Objections = FloorJson.Read<Listed<Objection>>(reader.GetString(13)),
            Reason = reader.TextOrNull(14),
            Answered = [.. reader.GetFieldValue<string[]>(15)],
            AlreadyHappened = reader.GetBoolean(16),
            CautionsShown = [.. reader.GetFieldValue<string[]>(17)],
            Skew = reader.OrNull<long>(18) is { } ms ? TimeSpan.FromMilliseconds(ms) : null,
            MendedBy = mendedBy ?? (line.WordsId == line.Entry.Id ? null : line.WordsId),
            Mark = mendedBy is null
                ? line.WordsId == line.Entry.Id
                    ? Mark.Stands
                    : Mark.Corrected
                : reader.GetBoolean(20)
                    ? Mark.Moved
                    : Mark.Struck,
            SeenAfterwards = reader.TextOrNull(21) is { } seen ? FloorJson.Read<Listed<Objection>>(seen) : [],
        };
    }

    private static class Cursor
    {
        public static string Text(DateTimeOffset at, long seq) =>
            string.Create(CultureInfo.InvariantCulture, $"{at.UtcTicks}-{seq}");

        /// <summary>One that cannot be read begins at the top.</summary>
        public static (DateTimeOffset At, long Seq) Read(string? text) =>
            text?.Split('-') is [var at, var seq]
            && long.TryParse(at, CultureInfo.InvariantCulture, out var ticks)
            && ticks is > 0 and < 3_155_378_975_999_999_999
            && long.TryParse(seq, CultureInfo.InvariantCulture, out var number)
                ? (new(ticks, TimeSpan.Zero), number)
                : (new(9999, 1, 1, 0, 0, 0, TimeSpan.Zero), long.MaxValue);
    }
}
