using System.Data;
using System.Reflection;
using BrewFloor.Store.PrivateServer;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>The database at one moment, for as long as this is held, while others go on writing.</summary>
internal sealed class Snapshot : IAsyncDisposable
{
    private readonly NpgsqlConnection _connection;
    private readonly NpgsqlTransaction _transaction;

    private Snapshot(NpgsqlConnection connection, NpgsqlTransaction transaction) =>
        (_connection, _transaction) = (connection, transaction);

    /// <summary>In the transaction that holds it.</summary>
    public NpgsqlConnection Connection => _connection;

    /// <summary>What others name it by, to see the same moment.</summary>
    public string Name { get; private set; } = "";

    public DateTimeOffset At { get; private set; }

    /// <summary>The newest migration; empty: none.</summary>
    public string Schema { get; private set; } = "";

    /// <summary>The migrations this program has.</summary>
    public static IReadOnlySet<string> KnownSchemas { get; } =
        typeof(FloorDb)
            .Assembly.GetTypes()
            .Select(type => type.GetCustomAttribute<MigrationAttribute>()?.Id)
            .OfType<string>()
            .Append("")
            .ToHashSet(StringComparer.Ordinal);

    public static async Task<Snapshot> TakeAsync(string owner, CancellationToken stop)
    {
        var connection = Connections.Alone(owner);
        try
        {
            await connection.OpenAsync(stop);
            var transaction = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, stop);
            var snapshot = new Snapshot(connection, transaction);
            await snapshot.ReadAsync(stop);
            return snapshot;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    public Task<Tally> TallyAsync(CancellationToken stop) => Tally.OfTablesAsync(_connection, stop);

    public async ValueTask DisposeAsync()
    {
        await _transaction.DisposeAsync();
        await _connection.DisposeAsync();
    }

    private async Task ReadAsync(CancellationToken stop)
    {
        const string Question = """
            SELECT pg_export_snapshot(), now(), to_regclass('public."__EFMigrationsHistory"') IS NOT NULL
            """;
        await using (var command = new NpgsqlCommand(Question, _connection))
        await using (var reader = await command.ExecuteReaderAsync(stop))
        {
            await reader.ReadAsync(stop);
            (Name, At) = (reader.GetString(0), await reader.GetFieldValueAsync<DateTimeOffset>(1, stop));
            if (!reader.GetBoolean(2))
            {
                return;
            }
        }

        const string Newest = """SELECT coalesce(max(migration_id), '') FROM "__EFMigrationsHistory" """;
        await using var newest = new NpgsqlCommand(Newest, _connection);
        Schema = (string)(await newest.ExecuteScalarAsync(stop))!;
    }
}
