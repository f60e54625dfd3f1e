using System.Globalization;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>A database beside the floor's, on the same server, for one proof; dropped after it.</summary>
internal sealed class ScratchDatabase : IAsyncDisposable
{
    private const string Prefix = "brewfloor_proof_";
    private const long RoomLeftMb = 256;
    private const long BytesPerMb = 1024 * 1024;

    // Somebody else's proof may be under way in a younger one.
    private static readonly TimeSpan LongestProof = TimeSpan.FromHours(6);

    private readonly string _server;
    private readonly string _name;

    private ScratchDatabase(string server, string name) => (_server, _name) = (server, name);

    /// <summary>The way in as its owner.</summary>
    public string Owner => new NpgsqlConnectionStringBuilder(_server) { Database = _name }.ConnectionString;

    /// <param name="server">The floor's database, as its owner.</param>
    /// <param name="folder">Where a private server keeps its data.</param>
    /// <exception cref="PrivateServerProblem">No right to make one, or no room for it.</exception>
    public static async Task<ScratchDatabase> MakeAsync(string server, string? folder, CancellationToken stop)
    {
        await using var connection = Connections.Alone(server);
        await connection.OpenAsync(stop);
        await SweepAsync(connection, stop);
        if (folder is not null)
        {
            await DemandRoomAsync(connection, folder, stop);
        }

        var name = $"{Prefix}{Guid.CreateVersion7():N}";
        try
        {
            await DoAsync(connection, $"CREATE DATABASE {name}", stop);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.InsufficientPrivilege)
        {
            throw BackupProblems.NoScratchDatabase(new NpgsqlConnectionStringBuilder(server).Username ?? "");
        }

        return new(server, name);
    }

    public async ValueTask DisposeAsync()
    {
        await using var connection = Connections.Alone(_server);
        await connection.OpenAsync();
        await DoAsync(connection, $"DROP DATABASE IF EXISTS {_name} WITH (FORCE)", CancellationToken.None);
    }

    // A full disk would stop the floor's own database too.
    private static async Task DemandRoomAsync(NpgsqlConnection connection, string folder, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand("SELECT pg_database_size(current_database())", connection);
        var neededMb = ((long)(await command.ExecuteScalarAsync(stop))! * 2 / BytesPerMb) + RoomLeftMb;
        var freeMb = new DataFolder(folder).FreeMb();
        if (freeMb < neededMb)
        {
            throw BackupProblems.NoRoomToProve(folder, freeMb, neededMb);
        }
    }

    // Left by an app that was killed in the middle of a proof.
    private static async Task SweepAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        var left = new List<string>();
        await using (
            var command = new NpgsqlCommand(
                $"SELECT datname, now() FROM pg_database WHERE datname LIKE '{Prefix}%'",
                connection
            )
        )
        await using (var reader = await command.ExecuteReaderAsync(stop))
        {
            while (await reader.ReadAsync(stop))
            {
                var now = await reader.GetFieldValueAsync<DateTimeOffset>(1, stop);
                if (MadeAt(reader.GetString(0)) is { } made && now - made > LongestProof)
                {
                    left.Add(reader.GetString(0));
                }
            }
        }

        foreach (var name in left)
        {
            await DoAsync(connection, $"DROP DATABASE IF EXISTS {name} WITH (FORCE)", stop);
        }
    }

    // The first 48 bits of such an id are milliseconds.
    private static DateTimeOffset? MadeAt(string name) =>
        name.Length == Prefix.Length + 32
        && long.TryParse(
            name.AsSpan(Prefix.Length, 12),
            NumberStyles.HexNumber,
            CultureInfo.InvariantCulture,
            out var ms
        )
        && ms < DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()
            ? DateTimeOffset.FromUnixTimeMilliseconds(ms)
            : null;

    private static async Task DoAsync(NpgsqlConnection connection, string statement, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync(stop);
    }
}
