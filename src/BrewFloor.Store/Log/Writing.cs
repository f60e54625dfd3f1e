using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Writes a request that was heard and let through: entries, timelines, states, jobs, and the word to the pages.</summary>
internal sealed class Writing(NpgsqlConnection connection, Session session, KindsStored kinds)
{
    internal const string Entry = """
        INSERT INTO entries (id, seq, at, recorded, kind, version, payload, sent_at, skew_ms, done_by, note, logged_by, by_token,
            objections, house_rules_version, reason, answered, already_happened, done_anyway, cautions_shown, hash, hash_version)
        VALUES ($1, nextval('entry_seq'), $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18, $19, $20, $21)
        """;

    internal const string Subjects = """
        INSERT INTO entry_subjects (subject_id, subject_kind, at, seq, since, entry_id, words_id)
        SELECT s.id, s.kind, $3, coalesce($4, currval('entry_seq')), currval('entry_seq'), $5, $6
        FROM unnest($1::uuid[], $2::text[]) AS s(id, kind)
        """;

    internal const string Told =
        "SELECT pg_notify('floor', 'entry ' || seq) FROM entries WHERE id = ANY($1) ORDER BY seq";

    internal const string Written = "SELECT id, seq, at FROM entries WHERE id = ANY($1)";

    private const string Ends =
        "UPDATE entry_subjects SET until = currval('entry_seq') WHERE entry_id = $1 AND until IS NULL";

    private const string NothingHanded =
        "UPDATE handed_over SET until = currval('entry_seq') WHERE entry_id = $1 AND until IS NULL";

    private readonly DateTimeOffset _recorded = session.Opened.Recorded;

    public string Head { get; init; } = Locks.OfHead;

    public async Task<Dictionary<Guid, (long Seq, DateTimeOffset At)>> WriteAsync(CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        if (session.Entries.Count == 0)
        {
            return [];
        }

        if (!await BringAsync(batch, stop) && Head.Length > 0)
        {
            batch.Add(Head);
        }

        foreach (var heard in session.Entries)
        {
            Write(batch, heard);
        }

        new Folding(session).Write(batch);
        Tell(batch);
        return await SeqsAsync(batch, stop);
    }

    // New batches, cultures and items are numbered under the head's lock, and judged for jobs with their number.
    private async Task<bool> BringAsync(NpgsqlBatch batch, CancellationToken stop)
    {
        var batches = session.Entries.SelectMany(e => Newcomers.Batches(Hearing.Brings(e.Entry))).ToArray();
        var cultures = session.Entries.SelectMany(e => Newcomers.Cultures(Hearing.Brings(e.Entry))).ToArray();
        var items = session.Entries.SelectMany(e => Newcomers.Items(Hearing.Brings(e.Entry))).ToArray();
        if (batches.Length + cultures.Length + items.Length == 0)
        {
            return false;
        }

        var (batchNumber, cultureNumber, itemNumber) = await LastNumbersAsync(stop);
        foreach (var made in batches)
        {
            Bring(batch, made with { Number = ++batchNumber });
        }

        foreach (var made in cultures)
        {
            Bring(batch, made with { Number = ++cultureNumber });
        }

        foreach (var made in items)
        {
            Bring(batch, made with { Number = ++itemNumber });
        }

        return true;
    }

    private async Task<(int Batch, int Culture, int Item)> LastNumbersAsync(CancellationToken stop)
    {
        if (Head.Length > 0)
        {
            await connection.DoAsync(Head, stop);
        }

        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            SELECT (SELECT coalesce(max(number), 0) FROM batches), (SELECT coalesce(max(number), 0) FROM cultures),
                   (SELECT coalesce(max(number), 0) FROM items)
            """
        );
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        return (reader.GetInt32(0), reader.GetInt32(1), reader.GetInt32(2));
    }

    // The correction of the entry that brought it may name it anew: the thing keeps its number.
    private void Bring(NpgsqlBatch batch, Batch made)
    {
        session.Opened.Things.Add(made);
        Bring(batch, "batches", made.Id, made.Number, FloorJson.Of(made));
    }

    private void Bring(NpgsqlBatch batch, Culture made)
    {
        session.Opened.Things.Add(made);
        Bring(batch, "cultures", made.Id, made.Number, FloorJson.Of(made));
    }

    private void Bring(NpgsqlBatch batch, Item made)
    {
        session.Opened.Things.Add(made);
        Bring(batch, "items", made.Id, made.Number, FloorJson.Of(made));
    }

    private static void Bring(NpgsqlBatch batch, string table, Guid id, int number, string thing) =>
        batch.Add(
            $"INSERT INTO {table} (id, number, version, thing) VALUES ($1, $2, 1, $3) ON CONFLICT (id) DO NOTHING",
            id,
            number,
            Statements.Jsonb(thing)
        );

    private void Write(NpgsqlBatch batch, Heard heard)
    {
        var entry = heard.Entry;
        var kind = EntryKinds.NameOf(entry);
        if (!kinds.Has(kind))
        {
            batch.Add(
                "INSERT INTO entry_kinds (kind, version) VALUES ($1, $2) ON CONFLICT DO NOTHING",
                kind,
                EntryJson.VersionOf(kind)
            );
        }

        Add(batch, heard, kind);
        Stands(batch, entry.Subjects, entry.At, seq: null, entry.Id, entry.Id);
        if (entry is Corrected corrected)
        {
            batch.Add(Ends, corrected.Entry);
        }

        if (entry is Struck struck)
        {
            Strike(batch, struck);
        }

        // What stands in another's place: a replacement, or what a struck correction had replaced.
        foreach (
            var step in session.Steps.Where(s => s.Cause == entry.Id && s.Now is { } now && now.Entry.Id != entry.Id)
        )
        {
            var now = step.Now!;
            Stands(batch, now.Entry.Subjects, now.Entry.At, now.Seq, now.Entry.Id, now.WordsId);
        }
    }

    // A struck correction leaves, and so does what it put in place: what it had replaced stands there again.
    private void Strike(NpgsqlBatch batch, Struck struck)
    {
        foreach (var id in struck.Entries.Distinct())
        {
            batch.Add(Ends, id);
            if (session.Opened.Targets.Find(id)!.Corrects is { } first)
            {
                batch.Add(Ends, first);
            }
            else
            {
                batch.Add(NothingHanded, id);
            }
        }
    }

    private void Add(NpgsqlBatch batch, Heard heard, string kind)
    {
        var (entry, sent) = (heard.Entry, heard.Sent);
        var author = session.Request.AuthorOf(sent);
        var hasReason = !string.IsNullOrWhiteSpace(sent.Answer.Reason);
        var skew = Clocks.Skew(sent.Entry.SentAt, _recorded);
        batch.Add(
            Entry,
            entry.Id,
            entry.At,
            _recorded,
            kind,
            EntryJson.VersionOf(kind),
            Statements.Jsonb(EntryJson.PayloadOf(entry)),
            Statements.Instant(entry.SentAt is { } at ? Times.Cut(at) : null),
            Statements.Long(skew == TimeSpan.Zero ? null : (long)skew.TotalMilliseconds),
            entry.DoneBy.ToArray(),
            Statements.Text(entry.Note),
            author.Id,
            author.IsToken,
            Statements.Jsonb(FloorJson.Of(heard.Verdict.Objections)),
            session.Opened.Rules.Version,
            Statements.Text(hasReason ? sent.Answer.Reason : null),
            sent.Answer.Codes.ToArray(),
            sent.Answer.AlreadyHappened,
            heard.Verdict.DoneAnyway(sent.Answer).ToArray(),
            sent.CautionsShown.ToArray(),
            EntryJson.Hash(sent.Entry, author),
            EntryJson.HashVersion
        );
    }

    private static void Stands(
        NpgsqlBatch batch,
        IEnumerable<Subject> subjects,
        DateTimeOffset at,
        long? seq,
        Guid first,
        Guid words
    )
    {
        Subject[] all = [.. subjects.Distinct()];
        batch.Add(
            Subjects,
            all.Select(s => s.Id).ToArray(),
            all.Select(s => SubjectKinds.NameOf(s.Kind)).ToArray(),
            at,
            Statements.Long(seq),
            first,
            words
        );
    }

    // Numbers only; whoever listens reads the rest.
    private void Tell(NpgsqlBatch batch)
    {
        Guid[] ids = [.. session.Entries.Select(e => e.Entry.Id)];
        batch.Add(Told, ids);
        batch.Add(Written, ids);
    }

    private static async Task<Dictionary<Guid, (long Seq, DateTimeOffset At)>> SeqsAsync(
        NpgsqlBatch batch,
        CancellationToken stop
    )
    {
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var seqs = new Dictionary<Guid, (long, DateTimeOffset)>();
        do
        {
            while (reader.FieldCount == 3 && await reader.ReadAsync(stop))
            {
                seqs.Add(reader.GetGuid(0), (reader.GetInt64(1), reader.At(2)));
            }
        } while (await reader.NextResultAsync(stop));

        return seqs;
    }
}
