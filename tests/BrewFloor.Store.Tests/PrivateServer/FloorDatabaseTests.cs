using System.Diagnostics;
using BrewFloor.Store.PrivateServer;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class FloorDatabaseTests : IAsyncDisposable
{
    private readonly FolderUnderTest _folder = new();
    private readonly CancellationTokenSource _stop = CancellationTokenSource.CreateLinkedTokenSource(
        FolderUnderTest.Stop
    );

    public async ValueTask DisposeAsync()
    {
        _stop.Dispose();
        await _folder.DisposeAsync();
    }

    [Fact]
    public async Task A_server_killed_under_a_living_app_is_back_within_thirty_seconds_and_the_app_works_on()
    {
        await using var database = Database(new DatabaseAddress.InFolder(_folder.Options));
        await database.StartAsync(FolderUnderTest.Stop);
        var watching = database.WatchAsync(_stop.Token);
        var connection = await database.ConnectionStringAsync(FolderUnderTest.Stop);
        Assert.Equal(1, await AskPooledAsync(connection)); // leaves a connection in the pool that dies with the server

        var before = _folder.Pid;
        _folder.KillServer();
        var down = Stopwatch.StartNew();
        await FolderUnderTest.EventuallyAsync(() => _folder.Pid != 0 && _folder.Pid != before, seconds: 30);
        await FolderUnderTest.EventuallyAsync(() => database.IsReachable, seconds: 30);
        TestContext.Current.TestOutputHelper!.WriteLine($"back after {down.Elapsed.TotalSeconds:F1} s");

        Assert.Equal(1, await AskPooledAsync(connection));
        await _stop.CancelAsync();
        await watching;
    }

    [Fact]
    public async Task A_stopped_app_leaves_no_server_behind_and_frees_the_folder()
    {
        var database = Database(new DatabaseAddress.InFolder(_folder.Options));
        await database.StartAsync(FolderUnderTest.Stop);

        await database.DisposeAsync();
        Assert.Equal(0, _folder.Pid);

        await using var next = await _folder.StartAsync();
        await database.DisposeAsync(); // the container disposes once more: by now the server is another's
        Assert.True(next.IsAlive);
    }

    [Fact]
    public async Task A_given_server_is_waited_for_and_found_again_after_it_went()
    {
        var server = await _folder.StartAsync();
        var given = server.Connections;
        await server.DisposeAsync();
        await using var database = Database(new DatabaseAddress.Given(given));
        await database.StartAsync(FolderUnderTest.Stop);
        var watching = database.WatchAsync(_stop.Token);
        Assert.False(database.IsReachable);
        Assert.Null(database.LastReachableAt);
        Assert.NotNull(database.Reach.Problem);

        await using (await _folder.StartAsync())
        {
            await FolderUnderTest.EventuallyAsync(() => database.IsReachable);
            Assert.Equal(given.Application, await database.ConnectionStringAsync(FolderUnderTest.Stop));
        }

        await FolderUnderTest.EventuallyAsync(() => !database.IsReachable);
        Assert.NotNull(database.LastReachableAt);

        await using (await _folder.StartAsync())
        {
            await FolderUnderTest.EventuallyAsync(() => database.IsReachable);
        }

        await _stop.CancelAsync();
        await watching;
    }

    [Fact]
    public async Task Of_several_given_hosts_the_one_that_answers_is_found()
    {
        await using var server = await _folder.StartAsync();
        var several = new NpgsqlConnectionStringBuilder(server.Connections.Owner);
        several.Host = $"/nowhere,{several.Host}";
        await using var database = Database(
            DatabaseAddress.Of(several.ConnectionString + ";Target Session Attributes=primary", null, _folder.Options)
        );

        await database.StartAsync(FolderUnderTest.Stop);

        Assert.Null(database.Reach.Problem);
        var connection = await database.ConnectionStringAsync(FolderUnderTest.Stop);
        Assert.Equal("brewfloor_app", await FolderUnderTest.AskAsync(connection, "SELECT current_user::text"));
    }

    [Fact]
    public async Task A_given_server_is_neither_started_nor_stopped()
    {
        await using var server = await _folder.StartAsync();
        var database = Database(new DatabaseAddress.Given(server.Connections));
        await database.StartAsync(FolderUnderTest.Stop);
        Assert.True(database.IsReachable);

        await database.DisposeAsync();

        Assert.True(server.IsAlive);
    }

    private static FloorDatabase Database(DatabaseAddress address) =>
        new(address, TimeProvider.System, NullLogger<FloorDatabase>.Instance);

    private static async Task<object?> AskPooledAsync(string connection)
    {
        await using var open = new NpgsqlConnection(connection);
        await open.OpenAsync(FolderUnderTest.Stop);
        await using var command = new NpgsqlCommand("SELECT 1", open);
        return await command.ExecuteScalarAsync(FolderUnderTest.Stop);
    }
}
