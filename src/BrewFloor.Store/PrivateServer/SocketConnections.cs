using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The ways into a private server, and what must be in it: its two roles and its database.</summary>
internal static class SocketConnections
{
    public const string OwnerRole = "brewfloor";
    private const string Database = "brewfloor";

    public static Connections In(DataFolder folder) =>
        new(Of(folder, OwnerRole, Database), Of(folder, ApplicationRole.Name, Database));

    /// <summary>Makes the database and the application role when they are missing.</summary>
    /// <exception cref="NpgsqlException">The server does not answer, or not yet.</exception>
    /// <exception cref="PrivateServerProblem">The disk is full.</exception>
    public static async Task PrepareAsync(DataFolder folder, CancellationToken stop)
    {
        await using var connection = Connections.Alone(Of(folder, OwnerRole, "postgres"));
        await connection.OpenAsync(stop);
        try
        {
            await FillAsync(connection, stop);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.DiskFull)
        {
            throw FailedPrograms.DiskFull(folder);
        }
    }

    private static async Task FillAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        if (!await ExistsAsync(connection, "SELECT 1 FROM pg_database WHERE datname = $1", Database, stop))
        {
            await DoAsync(connection, $"CREATE DATABASE {Database}", stop);
        }

        if (!await ExistsAsync(connection, "SELECT 1 FROM pg_roles WHERE rolname = $1", ApplicationRole.Name, stop))
        {
            await DoAsync(connection, $"CREATE ROLE {ApplicationRole.Name} LOGIN", stop);
        }
    }

    private static string Of(DataFolder folder, string role, string database) =>
        new NpgsqlConnectionStringBuilder
        {
            Host = folder.Sockets,
            Port = 5432,
            Username = role,
            Database = database,
            MaxPoolSize = 20,
        }.ConnectionString;

    private static async Task<bool> ExistsAsync(
        NpgsqlConnection c,
        string question,
        string name,
        CancellationToken stop
    )
    {
        await using var command = new NpgsqlCommand(question, c) { Parameters = { new() { Value = name } } };
        return await command.ExecuteScalarAsync(stop) is not null;
    }

    private static async Task DoAsync(NpgsqlConnection connection, string statement, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(stop);
    }
}
