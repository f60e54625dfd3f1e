using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>The ledger held against the log.</summary>
/// <param name="Stored">Entries in the log.</param>
/// <param name="Lost">Acknowledged, and not in the log.</param>
/// <param name="Differs">Acknowledged with another number or time than it has in the log.</param>
/// <param name="Unseen">In the log, and passed over by the reader.</param>
/// <param name="Twice">Sent once, and more than once in the log.</param>
/// <param name="Half">Requests stored in part, and entries without all of their places on their subjects' timelines.</param>
/// <param name="Unequal">Stored states, snapshots or handed-over values that differ from what a refold of the log makes.</param>
internal sealed record Reckoning(int Stored, int Lost, int Differs, int Unseen, int Twice, int Half, int Unequal)
{
    public bool IsClean => this is { Lost: 0, Differs: 0, Unseen: 0, Twice: 0, Half: 0, Unequal: 0 };

    private const string Folded = """
        SELECT 'state', subject_id::text, concat_ws(' ', state, fold_version, entries, last_at) FROM states
        UNION ALL SELECT 'snapshot', concat_ws(' ', subject_id, at, seq), concat_ws(' ', entries, state) FROM snapshots
        UNION ALL SELECT 'handed', concat_ws(' ', entry_id, place), concat_ws(' ', taker_id, giver_id, kind, value)
                  FROM handed_over WHERE until IS NULL
        """;

    private const string Notes = """
        SELECT count(*)::int FROM (
            SELECT FROM entries WHERE note LIKE 'writer %' GROUP BY note HAVING count(*) > 1) more
        """;

    /// <summary>Also folds the whole log anew.</summary>
    public static async Task<Reckoning> OfAsync(
        IEnumerable<Acknowledged> acknowledged,
        IEnumerable<Guid[]> requests,
        IReadOnlySet<Guid> seen,
        BorrowedDatabase database,
        CancellationToken stop
    )
    {
        await using var owner = NpgsqlDataSource.Create(database.Connections.Owner);
        await using var connection = await owner.OpenConnectionAsync(stop);
        var stored = await StoredAsync(connection, stop);
        var said = acknowledged.ToArray();
        var before = await FoldedAsync(connection, stop);
        await Refolding.AllAsync(owner, stop);
        var after = await FoldedAsync(connection, stop);
        return new(
            stored.Count,
            said.Count(a => !stored.ContainsKey(a.Id)),
            said.Count(a => stored.TryGetValue(a.Id, out var line) && (line.Seq, line.At) != (a.Seq, a.At)),
            stored.Keys.Count(id => !seen.Contains(id)),
            await TwiceAsync(connection, stop),
            requests.Count(ids => ids.Any(stored.ContainsKey) && !ids.All(stored.ContainsKey))
                + stored.Values.Count(line => !line.IsWhole),
            before.Except(after).Concat(after.Except(before)).Select(row => row.Key).Distinct().Count()
        );
    }

    private static async Task<Dictionary<Guid, StoredLine>> StoredAsync(
        NpgsqlConnection connection,
        CancellationToken stop
    )
    {
        const string Question = """
            SELECT e.id, e.seq, e.at, e.kind, e.version, e.payload,
                   (SELECT coalesce(array_agg(s.subject_id), '{}') FROM entry_subjects s
                    WHERE s.entry_id = e.id AND s.until IS NULL AND (s.at, s.seq) = (e.at, e.seq))
            FROM entries e
            """;
        await using var command = new NpgsqlCommand(Question, connection);
        await using var reader = await command.ExecuteReaderAsync(stop);
        var stored = new Dictionary<Guid, StoredLine>();
        while (await reader.ReadAsync(stop))
        {
            var entry = EntryJson.Read(reader.GetString(3), reader.GetInt32(4), reader.GetString(5));
            var stands = (await reader.GetFieldValueAsync<Guid[]>(6, stop)).Order();
            stored.Add(
                reader.GetGuid(0),
                new(
                    reader.GetInt64(1),
                    await reader.GetFieldValueAsync<DateTimeOffset>(2, stop),
                    entry.Subjects.Select(s => s.Id).Distinct().Order().SequenceEqual(stands)
                )
            );
        }

        return stored;
    }

    private static async Task<int> TwiceAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(Notes, connection);
        return (int)(await command.ExecuteScalarAsync(stop))!;
    }

    private static async Task<Dictionary<string, string>> FoldedAsync(
        NpgsqlConnection connection,
        CancellationToken stop
    )
    {
        await using var command = new NpgsqlCommand(Folded, connection);
        await using var reader = await command.ExecuteReaderAsync(stop);
        var folded = new Dictionary<string, string>(StringComparer.Ordinal);
        while (await reader.ReadAsync(stop))
        {
            folded.Add($"{reader.GetString(0)} {reader.GetString(1)}", reader.GetString(2));
        }

        return folded;
    }

    private sealed record StoredLine(long Seq, DateTimeOffset At, bool IsWhole);
}
