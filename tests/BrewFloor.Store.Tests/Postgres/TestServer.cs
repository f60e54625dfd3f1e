using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using DotNet.Testcontainers.Builders;
using Npgsql;
using Testcontainers.PostgreSql;

[assembly: AssemblyFixture(typeof(TestServer))]

namespace BrewFloor.Store.Tests.Postgres;

/// <summary>One server for the run: the one named, else a container where an engine answers, else a private cluster.</summary>
/// <remarks>It is started by the first test that wants a database; tests that want none don't wait for it.</remarks>
public sealed class TestServer : IAsyncLifetime
{
    private readonly SemaphoreSlim _first = new(1, 1);
    private readonly string _template = $"floor_template_{Guid.CreateVersion7():N}";
    private readonly List<string> _made = [];
    private IAsyncDisposable? _ours;
    private Connections? _server;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>A database of the caller's own, copied from the migrated template.</summary>
    public Task<Connections> NewDatabaseAsync(CancellationToken stop = default) =>
        MakeAsync($" TEMPLATE {_template}", stop);

    /// <summary>A database with nothing in it.</summary>
    public Task<Connections> EmptyDatabaseAsync(CancellationToken stop) => MakeAsync("", stop);

    /// <summary>The database is gone, as far as anybody can tell: who is inside is put out, and nobody gets in.</summary>
    public Task TakeAwayAsync(Connections database, CancellationToken stop) =>
        DoAsync(
            _server!,
            $"""
            ALTER DATABASE {NameOf(database)} ALLOW_CONNECTIONS false;
            SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '{NameOf(database)}'
            """,
            stop
        );

    public Task BringBackAsync(Connections database, CancellationToken stop) =>
        DoAsync(_server!, $"ALTER DATABASE {NameOf(database)} ALLOW_CONNECTIONS true", stop);

    private static string NameOf(Connections database) => new NpgsqlConnectionStringBuilder(database.Owner).Database!;

    private async Task<Connections> MakeAsync(string from, CancellationToken stop)
    {
        var server = await ServerAsync(stop);
        var name = $"floor_{Guid.CreateVersion7():N}";
        await DoAsync(server, $"CREATE DATABASE {name}{from}", stop);
        lock (_made)
        {
            _made.Add(name);
        }

        return server.To(name);
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        if (_ours is not null)
        {
            await _ours.DisposeAsync();
        }
        else if (_server is not null)
        {
            foreach (var name in _made.Append(_template)) // somebody's server is left as it was found
            {
                await DoAsync(_server, $"DROP DATABASE IF EXISTS {name} WITH (FORCE)", CancellationToken.None);
            }
        }

        _first.Dispose();
    }

    private async Task<Connections> ServerAsync(CancellationToken stop)
    {
        await _first.WaitAsync(stop);
        try
        {
            return _server ??= await StartAsync(stop);
        }
        finally
        {
            _first.Release();
        }
    }

    private async Task<Connections> StartAsync(CancellationToken stop)
    {
        var (ours, connection) = Environment.GetEnvironmentVariable("BREWFLOOR_TEST_DB") is { Length: > 0 } named
            ? (null, named)
            : await ContainerAsync(stop) ?? await ThrowAwayCluster.StartAsync(stop);
        _ours = ours;
        var server = Connections.OfOneLogin(connection);
        await ApplicationRole.EnsureAsync(server, stop);
        await DoAsync(server, $"CREATE DATABASE {_template}", stop);
        await Template.MigrateAsync(server.To(_template).Owner, stop);
        NpgsqlConnection.ClearAllPools(); // a template with a guest cannot be copied
        return server;
    }

    private static async Task<(IAsyncDisposable?, string)?> ContainerAsync(CancellationToken stop)
    {
        try
        {
            var container = new PostgreSqlBuilder("postgres:17-alpine").Build();
            await container.StartAsync(stop);
            return (container, container.GetConnectionString());
        }
        catch (DockerUnavailableException)
        {
            return null;
        }
    }

    private static async Task DoAsync(Connections server, string statement, CancellationToken stop)
    {
        await using var connection = Connections.Alone(server.Owner);
        await connection.OpenAsync(stop);
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(stop);
    }
}
