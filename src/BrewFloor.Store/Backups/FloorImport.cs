using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>Fills an empty place from an export: the log as it was stored, unjudged, with its numbers, times and hashes; then folds it.</summary>
public sealed class FloorImport(DatabaseAddress address)
{
    private const int LinesAtOnce = 500;

    private const string Sequences = """
        SELECT setval('entry_seq', (SELECT coalesce(max(seq), 0) + 1 FROM entries), false),
               setval(pg_get_serial_sequence('tank_occupancies', 'id'), (SELECT coalesce(max(id), 0) + 1 FROM tank_occupancies), false)
        """;

    /// <summary>While no app runs on the place.</summary>
    /// <returns>What is there now: the same as was exported, table by table.</returns>
    /// <exception cref="PrivateServerProblem">Nothing was imported: why, and what to do.</exception>
    public async Task<Tally> ImportAsync(string folder, CancellationToken stop)
    {
        folder = Path.GetFullPath(folder);
        var head = await HeadAsync(folder, stop);
        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var owner = database.Connections.Owner;
        await EmptyPlace.DemandAsync(owner, stop);
        await EmptyPlace.DemandAloneAsync(owner, stop);
        if (address is DatabaseAddress.Given)
        {
            await ApplicationRole.EnsureAsync(database.Connections, stop);
        }

        await EmptyPlace.ClearAsync(owner, stop);
        try
        {
            await FillAsync(owner, folder, head, stop);
            return head.Tables;
        }
        catch
        {
            await EmptyPlace.ClearAsync(owner, CancellationToken.None);
            throw;
        }
    }

    private static async Task<ExportHead> HeadAsync(string folder, CancellationToken stop)
    {
        var file = Path.Combine(folder, ExportHead.File);
        if (!File.Exists(file))
        {
            throw BackupProblems.NotAnExport(folder);
        }

        var head = ExportHead.Of(await File.ReadAllTextAsync(file, stop)) ?? throw BackupProblems.NotAnExport(folder);
        return
            head.Format > ExportHead.CurrentFormat
            || !Snapshot.KnownSchemas.Contains(head.Schema)
            || head.Tables.Tables.Keys.Except(ExportedTables.InOrder, StringComparer.Ordinal).Any()
            ? throw BackupProblems.Newer(folder, head.App)
            : head;
    }

    // First the tables of the version that exported, then, with the rows in them, on to those of today.
    private static async Task FillAsync(string owner, string folder, ExportHead head, CancellationToken stop)
    {
        await Migrator.MigrateAsync(owner, TimeZoneInfo.Utc.Id, head.Schema, stop);
        await using var database = NpgsqlDataSource.Create(Connections.Alone(owner).ConnectionString);
        await InsertAsync(database, folder, head, stop);
        await Migrator.MigrateAsync(owner, TimeZoneInfo.Utc.Id, stop);
        await Refolding.AllAsync(database, stop);
        if (Snapshot.KnownSchemas.Max(StringComparer.Ordinal)!.Equals(head.Schema, StringComparison.Ordinal))
        {
            DemandSame(folder, head.Folds, await Tally.AtAsync(owner, Tally.OfFoldsAsync, stop));
        }
    }

    private static async Task InsertAsync(
        NpgsqlDataSource database,
        string folder,
        ExportHead head,
        CancellationToken stop
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        await connection.DoAsync("DELETE FROM house_rules", stop); // what a new house begins with
        await connection.DoAsync("DELETE FROM site", stop);
        try
        {
            foreach (var table in ExportedTables.InOrder.Where(head.Tables.Tables.ContainsKey))
            {
                await InsertAsync(connection, table, Path.Combine(folder, table + ".jsonl"), stop);
            }

            await connection.DoAsync(Sequences, stop);
        }
        catch (PostgresException e) when (e.SqlState[..2] is "22" or "23") // a value that is none, a row that fits nowhere
        {
            throw BackupProblems.ExportAltered(folder, e.TableName ?? e.MessageText);
        }

        var inserted = await ExportedTables.TallyAsync(connection, head.Tables.Tables.Keys, stop);
        DemandSame(folder, head.Tables, inserted);
        await transaction.CommitAsync(stop);
    }

    private static async Task InsertAsync(
        NpgsqlConnection connection,
        string table,
        string file,
        CancellationToken stop
    )
    {
        if (!File.Exists(file))
        {
            throw BackupProblems.FileMissing(file);
        }

        var columns = await ExportedTables.ColumnsAsync(connection, table, stop);
        var secrets = ExportedTables
            .Secrets.Where(secret => secret.Key.Table.Equals(table, StringComparison.Ordinal))
            .ToArray();
        var statement = $"""
            INSERT INTO public.{table} ({ExportedTables.Quoted([.. columns, .. secrets.Select(s => s.Key.Column)])})
            SELECT {string.Join(", ", [ExportedTables.Quoted(columns), .. secrets.Select(s => s.Value)])}
            FROM jsonb_populate_recordset(null::public.{table}, $1)
            """;
        await foreach (var lines in File.ReadLinesAsync(file, stop).Chunk(LinesAtOnce))
        {
            await connection.DoAsync(statement, stop, Statements.Jsonb($"[{string.Join(',', lines)}]"));
        }
    }

    private static void DemandSame(string folder, Tally exported, Tally imported)
    {
        if (imported.DifferFrom(exported) is { Count: > 0 } tables)
        {
            throw BackupProblems.ExportAltered(folder, string.Join(", ", tables));
        }
    }
}
