using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class ServerProblemTests : IAsyncDisposable
{
    private readonly FolderUnderTest _folder = new();

    public ValueTask DisposeAsync() => _folder.DisposeAsync();

    [Fact]
    public async Task A_folder_in_use_says_so()
    {
        await using var first = await _folder.StartAsync();

        var problem = await _folder.RefusesAsync();

        Assert.Equal("folder-in-use", problem.Code);
        Assert.Contains(_folder.Path, problem.Message, StringComparison.Ordinal);
        Assert.Equal(1, await FolderUnderTest.AskAsync(first.Connections.Application, "SELECT 1"));
    }

    [Theory]
    [InlineData("/proc/brewfloor")] // nobody writes there, root neither
    [InlineData("/dev/null/brewfloor")]
    public async Task A_folder_that_cannot_be_written_says_so(string path) =>
        Assert.Equal("folder-not-writable", (await _folder.RefusesAsync(new(path))).Code);

    [Fact]
    public async Task A_file_where_the_folder_should_be_says_so()
    {
        await File.WriteAllTextAsync(_folder.Path, "beer", FolderUnderTest.Stop);

        Assert.Equal("folder-not-writable", (await _folder.RefusesAsync()).Code);
    }

    [Fact]
    public async Task Data_of_another_major_version_is_left_alone_and_named()
    {
        Directory.CreateDirectory(_folder.Data);
        await File.WriteAllTextAsync($"{_folder.Data}/PG_VERSION", "9\n", FolderUnderTest.Stop);

        var problem = await _folder.RefusesAsync();

        Assert.Equal("other-major-version", problem.Code);
        Assert.Equal(9, problem.Numbers["made"]);
        Assert.Contains("apt install postgresql-9", problem.Message, StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(_folder.Data));
    }

    [Fact]
    public async Task Without_PostgreSQL_it_says_what_to_install()
    {
        var problem = await _folder.RefusesAsync(_folder.Options with { Programs = _folder.Root });

        Assert.Equal("programs-missing", problem.Code);
        Assert.Contains("apt install postgresql", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_PostgreSQL_is_refused()
    {
        await WriteProgramAsync("initdb", "echo 'initdb (PostgreSQL) 14.9'");

        Assert.Equal(
            "programs-too-old",
            (await _folder.RefusesAsync(_folder.Options with { Programs = _folder.Root })).Code
        );
    }

    [Fact]
    public async Task What_a_failing_program_said_is_passed_on()
    {
        await WriteProgramAsync(
            "initdb",
            "test \"$1\" = --version && echo '(PostgreSQL) 15.1' || { echo 'initdb: error: no luck' >&2; exit 1; }"
        );

        var problem = await _folder.RefusesAsync(_folder.Options with { Programs = _folder.Root });

        Assert.Equal("did-not-start", problem.Code);
        Assert.Contains("initdb failed: initdb: error: no luck. More is in", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_user_says_so()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess, "only root runs PostgreSQL as somebody else");

        var problem = await _folder.RefusesAsync(_folder.Options with { User = "nobody-of-that-name" });

        Assert.Equal("user-missing", problem.Code);
    }

    [Fact]
    public async Task A_folder_below_one_that_is_closed_to_the_servers_user_names_the_closed_one()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess, "only root runs PostgreSQL as somebody else");
        File.SetUnixFileMode(_folder.Root, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var problem = await _folder.RefusesAsync();

        Assert.Equal("folder-not-traversable", problem.Code);
        Assert.Equal(_folder.Root, problem.Numbers["blocked"]);
    }

    [Fact]
    public async Task A_refused_start_lets_go_of_the_folder()
    {
        await _folder.RefusesAsync(_folder.Options with { Programs = _folder.Root });

        await using var cluster = await _folder.StartAsync();

        Assert.True(cluster.IsAlive);
    }

    [Fact]
    public async Task Too_little_room_for_a_database_is_said_before_it_is_begun()
    {
        await using var disk = SmallDisk.Mount(_folder.Root, megabytes: 100);

        var problem = await _folder.RefusesAsync(new PrivateServerOptions($"{disk.Path}/data"));

        Assert.Equal("disk-full", problem.Code);
        Assert.InRange((long)problem.Numbers["freeMb"], 90, 100);
        Assert.False(Directory.Exists($"{disk.Path}/data/pgdata"));
    }

    [Fact]
    public async Task A_full_disk_is_named_and_once_there_is_room_everything_saved_is_there()
    {
        await using var disk = SmallDisk.Mount(_folder.Root, megabytes: 300);
        await using var folder = new FolderUnderTest(Directory.CreateDirectory($"{disk.Path}/club").FullName);
        await using (var first = await folder.StartAsync())
        {
            await FolderUnderTest.AskAsync(first.Connections.Owner, "CREATE TABLE tanks AS SELECT 'K3' AS code");
        }

        disk.Fill();
        Assert.Equal("disk-full", (await folder.RefusesAsync()).Code);

        disk.MakeRoom();
        await using var again = await folder.StartAsync();
        Assert.Equal("K3", await FolderUnderTest.AskAsync(again.Connections.Owner, "SELECT code FROM tanks"));
    }

    private async Task WriteProgramAsync(string name, string script)
    {
        var file = $"{_folder.Root}/{name}";
        await File.WriteAllTextAsync(file, $"#!/bin/sh\n{script}\n", FolderUnderTest.Stop);
        File.SetUnixFileMode(file, (UnixFileMode)0b111_101_101);
    }
}
