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

    private const int AtOnce = 5000;

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
        await connection.DoAsync(Locks.OfHead, stop);
        await connection.DoAsync("DELETE FROM snapshots", stop);
        await connection.DoAsync("DELETE FROM states", stop);
        await connection.DoAsync("DELETE FROM handed_over WHERE until IS NULL", stop);
        await connection.DoAsync($"DECLARE log NO SCROLL CURSOR FOR {Log}", stop);
        var whole = new WholeLog();
        while (await TakeAsync(whole, connection, stop))
        {
            await whole.WriteAsync(connection, stop);
        }

        await whole.WriteStatesAsync(connection, stop);
        await transaction.CommitAsync(stop);
    }

    // A part at a time: a log of years fits into no small board's memory.
    private static async Task<bool> TakeAsync(WholeLog whole, NpgsqlConnection connection, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add($"FETCH {AtOnce} FROM log");
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var isMore = false;
        while (await reader.ReadAsync(stop))
        {
            whole.Take(Timelines.WholeLine(reader));
            isMore = true;
        }

        return isMore;
    }
}

/// <summary>All states, as the log runs by.</summary>
internal sealed class WholeLog
{
    private const int StatesAtOnce = 1000;

    private const string States = """
        INSERT INTO states (subject_id, kind, state, fold_version, entries, last_at, next_edge)
        SELECT id, kind, state, $6, entries, last_at, '-infinity'
        FROM unnest($1::uuid[], $2::text[], $3::jsonb[], $4::int[], $5::timestamptz[]) AS s(id, kind, state, entries, last_at)
        """;

    private const string Snapshots = """
        INSERT INTO snapshots (subject_id, at, seq, made, fold_version, entries, state)
        SELECT id, at, seq, (SELECT coalesce(max(seq), 0) FROM entries), $6, entries, state
        FROM unnest($1::uuid[], $2::timestamptz[], $3::bigint[], $4::int[], $5::jsonb[]) AS s(id, at, seq, entries, state)
        """;

    private const string HandedOver = """
        INSERT INTO handed_over (entry_id, place, taker_id, giver_id, since, kind, value)
        SELECT e.id, h.place, h.taker, h.giver, coalesce((SELECT max(until) FROM handed_over WHERE entry_id = e.id), e.seq), h.kind, h.value
        FROM unnest($1::uuid[], $2::uuid[], $3::uuid[], $4::text[], $5::jsonb[], $6::int[])
            AS h(entry, taker, giver, kind, value, place)
        JOIN entries e ON e.id = h.entry
        """;

    private readonly Dictionary<Subject, (State State, int Entries, DateTimeOffset LastAt)> _states = [];
    private readonly List<(Subject Subject, Line At, int Entries, State State)> _snapshots = [];
    private readonly List<(Guid Entry, int Place, Handed Handed)> _handed = [];

    public void Take(Line line)
    {
        Listed<Handed> handed =
        [
            .. line
                .Entry.HandedOver(s => _states.TryGetValue(s, out var giver) ? giver.State : Things.Blank(s))
                .Select(h => new Handed(h.Taker, h.Handed)),
        ];
        _handed.AddRange(handed.Select((h, place) => (line.Entry.Id, place, h)));
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

    /// <summary>What came up since the last time: snapshots, and what was handed over.</summary>
    public async Task WriteAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add(
            Snapshots,
            _snapshots.Select(s => s.Subject.Id).ToArray(),
            Statements.Instants(_snapshots.Select(s => (DateTimeOffset?)s.At.Entry.At)),
            _snapshots.Select(s => s.At.Seq).ToArray(),
            _snapshots.Select(s => s.Entries).ToArray(),
            Statements.Jsonb([.. _snapshots.Select(s => FloorJson.Of(s.State))]),
            StateRow.CurrentFold
        );
        batch.Add(
            HandedOver,
            _handed.Select(h => h.Entry).ToArray(),
            _handed.Select(h => h.Handed.Taker.Id).ToArray(),
            _handed.Select(h => h.Handed.Value.Giver.Id).ToArray(),
            _handed.Select(h => HandedOverKinds.NameOf(h.Handed.Value)).ToArray(),
            Statements.Jsonb([.. _handed.Select(h => FloorJson.Of(h.Handed.Value))]),
            _handed.Select(h => h.Place).ToArray()
        );
        await batch.ExecuteNonQueryAsync(stop);
        _snapshots.Clear();
        _handed.Clear();
    }

    public async Task WriteStatesAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        foreach (var part in _states.Chunk(StatesAtOnce))
        {
            await using var batch = connection.CreateBatch();
            batch.Add(
                States,
                part.Select(s => s.Key.Id).ToArray(),
                part.Select(s => SubjectKinds.NameOf(s.Key.Kind)).ToArray(),
                Statements.Jsonb([.. part.Select(s => FloorJson.Of(s.Value.State))]),
                part.Select(s => s.Value.Entries).ToArray(),
                Statements.Instants(part.Select(s => (DateTimeOffset?)s.Value.LastAt)),
                StateRow.CurrentFold
            );
            await batch.ExecuteNonQueryAsync(stop);
        }
    }
}
