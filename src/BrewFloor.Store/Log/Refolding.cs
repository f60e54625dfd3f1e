using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Folds the whole log anew, in its order: after a new fold version, and after a restore.</summary>
/// <remarks>Nobody writes meanwhile: it holds the head of the log. What was handed over is worked out anew too.</remarks>
public static class Refolding
{
    private const string Log = """
        SELECT s.at, s.seq, s.entry_id, s.words_id, e.kind, e.version, e.payload, e.note, e.done_by, e.done_anyway
        FROM (SELECT DISTINCT at, seq, entry_id, words_id FROM entry_subjects WHERE until IS NULL) s
        JOIN entries e ON e.id = s.words_id
        ORDER BY s.at, s.seq
        """;

    /// <summary>When states of an older fold are stored.</summary>
    public static async Task OldStatesAsync(NpgsqlDataSource database, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT EXISTS (SELECT FROM states WHERE fold_version <> $1)", StateRow.CurrentFold);
        if (await batch.ExecuteScalarAsync(stop) is true)
        {
            await AllAsync(database, stop);
        }
    }

    public static async Task AllAsync(NpgsqlDataSource database, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        await connection.DoAsync(Writing.HeadLock, stop);
        var whole = new WholeLog();
        await using (var batch = connection.CreateBatch())
        {
            batch.Add(Log);
            await using var reader = await batch.ExecuteReaderAsync(stop);
            while (await reader.ReadAsync(stop))
            {
                whole.Take(Timelines.WholeLine(reader));
            }
        }

        await whole.WriteAsync(connection, stop);
        await transaction.CommitAsync(stop);
    }
}

/// <summary>All states, as the log runs by.</summary>
internal sealed class WholeLog
{
    private readonly Dictionary<Subject, (State State, int Entries, DateTimeOffset LastAt)> _states = [];
    private readonly List<(Subject Subject, Line At, int Entries, State State)> _snapshots = [];
    private readonly List<(Line Line, int Place, Handed Handed)> _handed = [];

    public void Take(Line line)
    {
        Listed<Handed> handed =
        [
            .. line
                .Entry.HandedOver(s => _states.TryGetValue(s, out var giver) ? giver.State : Things.Blank(s))
                .Select(h => new Handed(h.Taker, h.Handed)),
        ];
        _handed.AddRange(handed.Select((h, place) => (line, place, h)));
        foreach (var subject in line.Entry.Subjects.Distinct())
        {
            var (state, entries, _) = _states.TryGetValue(subject, out var kept)
                ? kept
                : (Things.Blank(subject), 0, default);
            var after = line.After(state, handed);
            _states[subject] = (after, entries + 1, line.Entry.At);
            if ((entries + 1) % SnapshotRow.Every == 0)
            {
                _snapshots.Add((subject, line, entries + 1, after));
            }
        }
    }

    public async Task WriteAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add("DELETE FROM snapshots");
        batch.Add("DELETE FROM states");
        batch.Add("DELETE FROM handed_over WHERE until IS NULL");
        _states.ToList().ForEach(kept => WriteState(batch, kept.Key, kept.Value));
        _snapshots.ForEach(snapshot => WriteSnapshot(batch, snapshot));
        _handed.ForEach(handed => WriteHanded(batch, handed.Line.Entry.Id, handed.Place, handed.Handed));
        await batch.ExecuteNonQueryAsync(stop);
    }

    private static void WriteState(
        NpgsqlBatch batch,
        Subject subject,
        (State State, int Entries, DateTimeOffset LastAt) kept
    ) =>
        batch.Add(
            """
            INSERT INTO states (subject_id, kind, state, fold_version, entries, last_at, next_edge)
            VALUES ($1, $2, $3, $4, $5, $6, '-infinity')
            """,
            subject.Id,
            SubjectKinds.NameOf(subject.Kind),
            Statements.Jsonb(FloorJson.Of(kept.State)),
            StateRow.CurrentFold,
            kept.Entries,
            kept.LastAt
        );

    private static void WriteSnapshot(
        NpgsqlBatch batch,
        (Subject Subject, Line At, int Entries, State State) snapshot
    ) =>
        batch.Add(
            """
            INSERT INTO snapshots (subject_id, at, seq, made, fold_version, entries, state)
            SELECT $1, $2, $3, (SELECT coalesce(max(seq), 0) FROM entries), $4, $5, $6
            """,
            snapshot.Subject.Id,
            snapshot.At.Entry.At,
            snapshot.At.Seq,
            StateRow.CurrentFold,
            snapshot.Entries,
            Statements.Jsonb(FloorJson.Of(snapshot.State))
        );

    private static void WriteHanded(NpgsqlBatch batch, Guid entry, int place, Handed handed) =>
        batch.Add(
            """
            INSERT INTO handed_over (entry_id, place, taker_id, giver_id, since, kind, value)
            SELECT $1, $2, $3, $4, coalesce((SELECT max(until) FROM handed_over WHERE entry_id = $1), seq), $5, $6
            FROM entries WHERE id = $1
            """,
            entry,
            place,
            handed.Taker.Id,
            handed.Value.Giver.Id,
            HandedOverKinds.NameOf(handed.Value),
            Statements.Jsonb(FloorJson.Of(handed.Value))
        );
}
