using BrewFloor.Store.Backups;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>What a database that answers says of itself.</summary>
/// <param name="Version">Of PostgreSQL.</param>
/// <param name="Clock">Its clock, when it was asked.</param>
/// <param name="Pending">Migrations of this program that it lacks.</param>
public sealed record DatabaseLook(string Version, DateTimeOffset Clock, int Pending)
{
    public static async Task<DatabaseLook> TakeAsync(NpgsqlDataSource database, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        string[] known = [.. Snapshot.KnownSchemas.Where(id => id.Length > 0)];
        return new(
            connection.PostgreSqlVersion.ToString(),
            await ClockAsync(connection, stop),
            await HasHistoryAsync(connection, stop)
                ? known.Length - await AppliedAsync(connection, known, stop)
                : known.Length
        );
    }

    private static async Task<DateTimeOffset> ClockAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT clock_timestamp()");
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        return reader.At(0);
    }

    private static async Task<bool> HasHistoryAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add("""SELECT to_regclass('public."__EFMigrationsHistory"') IS NOT NULL""");
        return await batch.ExecuteScalarAsync(stop) is true;
    }

    private static async Task<int> AppliedAsync(NpgsqlConnection connection, string[] known, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add("""SELECT count(*)::int FROM "__EFMigrationsHistory" WHERE migration_id = ANY($1)""", [known]);
        return (int)(await batch.ExecuteScalarAsync(stop))!;
    }
}
