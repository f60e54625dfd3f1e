using System.Diagnostics;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class PrivateClusterTests : IAsyncDisposable
{
    private readonly FolderUnderTest _folder = new();

    public ValueTask DisposeAsync() => _folder.DisposeAsync();

    [Fact]
    public async Task A_fresh_folder_gets_a_server_that_keeps_what_it_is_told_and_has_no_network()
    {
        string[] settings = ["data_checksums", "fsync", "full_page_writes", "synchronous_commit", "listen_addresses"];
        await using var cluster = await _folder.StartAsync();

        var said = new List<object?>();
        foreach (var setting in settings)
        {
            said.Add(await FolderUnderTest.AskAsync(cluster.Connections.Application, $"SHOW {setting}"));
        }

        Assert.Equal(["on", "on", "on", "on", ""], said);
    }

    [Fact]
    public async Task The_second_start_finds_what_was_saved()
    {
        await using (var first = await _folder.StartAsync())
        {
            await FolderUnderTest.AskAsync(first.Connections.Owner, "CREATE TABLE tanks AS SELECT 'K3' AS code");
        }

        Assert.Equal(0, _folder.Pid);
        await using var second = await _folder.StartAsync();

        Assert.False(second.WasRunning);
        Assert.Equal("K3", await FolderUnderTest.AskAsync(second.Connections.Owner, "SELECT code FROM tanks"));
    }

    [Fact]
    public async Task The_owner_makes_tables_and_the_app_cannot()
    {
        await using var cluster = await _folder.StartAsync();
        await FolderUnderTest.AskAsync(cluster.Connections.Owner, "CREATE TABLE tanks (code text)");

        foreach (
            var statement in new[] { "CREATE TABLE kegs (id int)", "DROP TABLE tanks", "TABLE tanks", "CREATE ROLE x" }
        )
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() =>
                FolderUnderTest.AskAsync(cluster.Connections.Application, statement)
            );
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        }
    }

    [Fact]
    public async Task Only_the_servers_own_user_gets_to_its_socket()
    {
        await using var cluster = await _folder.StartAsync();

        const UnixFileMode OnlyOwner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        Assert.Equal(OnlyOwner, File.GetUnixFileMode($"{_folder.Path}/run"));
    }

    [Fact]
    public async Task After_the_app_was_killed_the_next_one_attaches_to_the_server_it_left()
    {
        var pid = await LeaveRunningAsync();

        await using var next = await _folder.StartAsync();

        Assert.True(next.WasRunning);
        Assert.Equal(pid, _folder.Pid);
        Assert.Equal(1, await FolderUnderTest.AskAsync(next.Connections.Application, "SELECT 1"));
    }

    [Fact]
    public async Task After_app_and_server_were_killed_the_next_one_starts_and_has_what_was_committed()
    {
        var killed = await _folder.StartAsync();
        await FolderUnderTest.AskAsync(killed.Connections.Owner, "CREATE TABLE tanks AS SELECT 'K3' AS code");
        await killed.LetGoAsync();
        _folder.KillServer();

        await using var next = await _folder.StartAsync();

        Assert.Equal("K3", await FolderUnderTest.AskAsync(next.Connections.Owner, "SELECT code FROM tanks"));
    }

    [Fact]
    public async Task A_server_whose_socket_was_swept_away_is_started_anew()
    {
        var pid = await LeaveRunningAsync();
        Directory.Delete($"{_folder.Path}/run", recursive: true);

        await using var next = await _folder.StartAsync();

        Assert.NotEqual(pid, _folder.Pid);
        Assert.Equal(1, await FolderUnderTest.AskAsync(next.Connections.Application, "SELECT 1"));
    }

    [Fact]
    public async Task Killed_in_the_middle_of_making_the_database_it_starts_over()
    {
        Directory.CreateDirectory($"{_folder.Path}/pgdata.new/base/1");
        await File.WriteAllTextAsync($"{_folder.Path}/pgdata.new/PG_VERSION", "15", FolderUnderTest.Stop);

        await using var cluster = await _folder.StartAsync();

        Assert.Empty(Directory.GetDirectories(_folder.Path, "pgdata.new*"));
        Assert.Equal(1, await FolderUnderTest.AskAsync(cluster.Connections.Application, "SELECT 1"));
    }

    // After a power cut the old process id may belong to anybody, here to another PostgreSQL of the same user.
    [Fact]
    public async Task A_process_id_that_belongs_to_a_stranger_by_now_does_not_stop_the_start()
    {
        await using var strangersFolder = new FolderUnderTest();
        await using var stranger = await strangersFolder.StartAsync();
        await LeaveTraceOfAsync(strangersFolder.Pid);
        Assert.Contains("postmaster.pid", await StartBareAsync(), StringComparison.Ordinal); // the control

        await using var cluster = await _folder.StartAsync();

        Assert.Equal(1, await FolderUnderTest.AskAsync(cluster.Connections.Application, "SELECT 1"));
        Assert.Equal(1, await FolderUnderTest.AskAsync(stranger.Connections.Application, "SELECT 1"));
    }

    [Fact]
    public async Task A_path_too_long_for_a_socket_gets_a_short_stand_in()
    {
        await using var deep = new FolderUnderTest($"{_folder.Root}/{new string('d', 120)}");

        await using var cluster = await deep.StartAsync();

        var socket = new NpgsqlConnectionStringBuilder(cluster.Connections.Application).Host!;
        Assert.StartsWith("/tmp/brewfloor-", socket, StringComparison.Ordinal);
        Assert.Equal(1, await FolderUnderTest.AskAsync(cluster.Connections.Application, "SELECT 1"));
        await cluster.DisposeAsync();
        Directory.Delete(socket, recursive: true);
    }

    [Fact]
    public async Task A_second_start_takes_less_than_half_as_long_as_the_first()
    {
        var first = Stopwatch.StartNew();
        await using (await _folder.StartAsync())
        {
            first.Stop();
        }

        var second = Stopwatch.StartNew();
        await using var cluster = await _folder.StartAsync();

        Assert.InRange(second.Elapsed, TimeSpan.Zero, first.Elapsed / 2); // nothing is made anew
    }

    private async Task<int> LeaveRunningAsync()
    {
        var killed = await _folder.StartAsync();
        await killed.LetGoAsync();
        return _folder.Pid;
    }

    private async Task LeaveTraceOfAsync(int pid)
    {
        var killed = await _folder.StartAsync();
        var file = $"{_folder.Data}/postmaster.pid";
        var lines = await File.ReadAllLinesAsync(file, FolderUnderTest.Stop);
        await killed.DisposeAsync();
        lines[0] = $"{pid}";
        await Account
            .ForPostgres(_folder.Options)
            .WriteAsync(file, string.Join('\n', lines) + "\n", FolderUnderTest.Stop);
    }

    // What PostgreSQL itself says to that file.
    private async Task<string> StartBareAsync()
    {
        var programs = await PostgresPrograms.FindAsync(_folder.Options, "initdb", dataOf: null, FolderUnderTest.Stop);
        var postgres = Account.ForPostgres(_folder.Options);
        var ran = await postgres.RunAsync(programs["postgres"], ["-D", _folder.Data], FolderUnderTest.Stop);
        return ran.Errors;
    }
}
