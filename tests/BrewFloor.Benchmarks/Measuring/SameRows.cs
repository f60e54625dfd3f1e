using Npgsql;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>Whether two ways of writing touch the database alike: the rows that PostgreSQL itself counts, table by table.</summary>
internal static class SameRows
{
    private const string Counted = """
        SELECT relname || ' ' || n_tup_ins || ' ' || n_tup_upd || ' ' || n_tup_del FROM pg_stat_user_tables
        WHERE relname NOT IN ('jobs', 'snapshots') ORDER BY relname
        """;

    /// <exception cref="InvalidOperationException">They don't: the comparison would mean nothing.</exception>
    public static async Task DemandAsync(NpgsqlDataSource database, Func<Task> baseline, Func<Task> subject, int times)
    {
        var bare = await RowsAsync(database, baseline, times);
        var ours = await RowsAsync(database, subject, times);
        if (!bare.SequenceEqual(ours, StringComparer.Ordinal))
        {
            throw new InvalidOperationException(
                $"The baseline writes other rows: {string.Join(", ", bare.Except(ours))} | {string.Join(", ", ours.Except(bare))}"
            );
        }
    }

    private static async Task<List<string>> RowsAsync(NpgsqlDataSource database, Func<Task> act, int times)
    {
        var before = await ReadAsync(database);
        for (var i = 0; i < times; i++)
        {
            await act();
        }

        var after = await ReadAsync(database);
        return [.. after.Select(a => Less(a, before.First(b => string.Equals(b[0], a[0], StringComparison.Ordinal))))];
    }

    private static string Less(string[] after, string[] before) =>
        $"{after[0]} {string.Join('/', after.Skip(1).Zip(before.Skip(1), (a, b) => long.Parse(a, null) - long.Parse(b, null)))}";

    // Counts are sent when a connection has been idle for a while, or ends: so all are ended.
    private static async Task<List<string[]>> ReadAsync(NpgsqlDataSource database)
    {
        database.Clear();
        await Task.Delay(1000);
        await using var alone = await database.OpenConnectionAsync();
        await using var command = new NpgsqlCommand(Counted, alone);
        await using var reader = await command.ExecuteReaderAsync();
        List<string[]> rows = [];
        while (await reader.ReadAsync())
        {
            rows.Add(reader.GetString(0).Split(' '));
        }

        return rows;
    }
}
