using System.Text.Json;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>Every table's rows, counted and hashed: two databases with the same tally hold the same.</summary>
/// <remarks>
/// A table's hash is the sum of its rows' SHA-256, piece by piece, so that neither their order nor a large table matters.
/// It is there against accidents, not against somebody who wants it to be equal: that is what the seal is for.
/// </remarks>
public sealed record Tally(IReadOnlyDictionary<string, Tally.Counted> Tables)
{
    /// <param name="Rows">How many.</param>
    /// <param name="Hash">Of all of them.</param>
    public sealed record Counted(long Rows, string Hash);

    // What a row's text looks like must not depend on the server it is asked on.
    private const string OneWayOfWriting = """
        SELECT set_config('timezone', 'UTC', true), set_config('datestyle', 'ISO, YMD', true), set_config('intervalstyle', 'iso_8601', true),
               set_config('bytea_output', 'hex', true), set_config('extra_float_digits', '1', true), set_config('search_path', 'public', true)
        """;

    private const string Names = """
        SELECT c.relname, quote_ident(c.relname) FROM pg_class c
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' ORDER BY c.relname COLLATE "C"
        """;

    // What a refold makes anew. Left out: when a state changes next, and when a snapshot or a value was made.
    private static readonly (string Name, string Rows)[] Folds =
    [
        ("states", "SELECT subject_id, kind, state, fold_version, entries, last_at FROM states"),
        ("snapshots", "SELECT subject_id, at, seq, fold_version, entries, state FROM snapshots"),
        ("handed_over", "SELECT entry_id, place, taker_id, giver_id, kind, value FROM handed_over WHERE until IS NULL"),
    ];

    public long Rows => Tables.Values.Sum(table => table.Rows);

    /// <summary>The tables that differ; none: the same.</summary>
    public IReadOnlyList<string> DifferFrom(Tally other) =>
        [
            .. Tables
                .Keys.Union(other.Tables.Keys, StringComparer.Ordinal)
                .Where(table => Tables.GetValueOrDefault(table) != other.Tables.GetValueOrDefault(table))
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Of all tables, within the transaction the connection is in: its snapshot, when it holds one.</summary>
    public static async Task<Tally> OfTablesAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        var names = new List<(string Name, string Rows)>();
        await using (var asked = new NpgsqlCommand(Names, connection))
        await using (var reader = await asked.ExecuteReaderAsync(stop))
        {
            while (await reader.ReadAsync(stop))
            {
                names.Add((reader.GetString(0), $"SELECT * FROM public.{reader.GetString(1)}"));
            }
        }

        return await CountAsync(connection, names, stop);
    }

    /// <summary>Of what is folded from the log, as far as a refold makes it the same.</summary>
    public static Task<Tally> OfFoldsAsync(NpgsqlConnection connection, CancellationToken stop) =>
        CountAsync(connection, Folds, stop);

    /// <summary>With a connection and a transaction of its own.</summary>
    /// <param name="connection">Where to.</param>
    /// <param name="count">Which of them.</param>
    public static async Task<Tally> AtAsync(
        string connection,
        Func<NpgsqlConnection, CancellationToken, Task<Tally>> count,
        CancellationToken stop
    )
    {
        await using var open = PrivateServer.Connections.Alone(connection);
        await open.OpenAsync(stop);
        await using var transaction = await open.BeginTransactionAsync(stop);
        return await count(open, stop);
    }

    internal byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(this);

    internal static Tally OfJson(ReadOnlySpan<byte> json) => JsonSerializer.Deserialize<Tally>(json)!;

    internal static async Task<Tally> CountAsync(
        NpgsqlConnection connection,
        IEnumerable<(string Name, string Rows)> tables,
        CancellationToken stop
    )
    {
        await using (var settings = new NpgsqlCommand(OneWayOfWriting, connection))
        {
            await settings.ExecuteNonQueryAsync(stop);
        }

        var counted = new SortedDictionary<string, Counted>(StringComparer.Ordinal);
        foreach (var (name, rows) in tables)
        {
            counted.Add(name, await CountAsync(connection, rows, stop));
        }

        return new(counted);
    }

    private static async Task<Counted> CountAsync(NpgsqlConnection connection, string rows, CancellationToken stop)
    {
        const int Pieces = 4; // of 60 bits: 240 of the 256
        var sums = string.Join(
            ", ",
            Enumerable
                .Range(0, Pieces)
                .Select(piece => $"coalesce(sum(('x' || substr(h, {(piece * 15) + 1}, 15))::bit(60)::bigint), 0)")
        );
        await using var command = new NpgsqlCommand(
            $"SELECT count(*), concat_ws('.', {sums}) FROM (SELECT encode(sha256(convert_to(r::text, 'UTF8')), 'hex') AS h FROM ({rows}) r) hashed",
            connection
        )
        {
            CommandTimeout = 0, // a large table takes as long as it takes
        };
        await using var reader = await command.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        return new(reader.GetInt64(0), reader.GetString(1));
    }
}
