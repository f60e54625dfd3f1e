using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.PrivateServer;

public sealed class PlainBackupTests(TestServer server) : IAsyncDisposable
{
    private const string Filled = """
        CREATE EXTENSION IF NOT EXISTS btree_gist;
        CREATE TABLE tanks AS SELECT 'K' || n AS code FROM generate_series(1, 5000) n;
        GRANT SELECT ON tanks TO brewfloor_app;
        """;

    private const string AllTanks = "SELECT md5(string_agg(code, ',' ORDER BY code)) FROM tanks";

    private readonly FolderUnderTest _folder = new();

    private string File => $"{_folder.Root}/club.backup";

    public ValueTask DisposeAsync() => _folder.DisposeAsync();

    [Fact]
    public async Task What_was_backed_up_while_the_app_ran_is_restored_into_a_fresh_folder_grants_and_all()
    {
        await using var app = await _folder.StartAsync();
        await FolderUnderTest.AskAsync(app.Connections.Owner, Filled);
        var saved = await FolderUnderTest.AskAsync(app.Connections.Owner, AllTanks);
        await Backup(_folder).BackupAsync(File, FolderUnderTest.Stop);
        await using var fresh = new FolderUnderTest();

        await Backup(fresh).RestoreAsync(File, FolderUnderTest.Stop);

        Assert.Equal(0, fresh.Pid); // started for the restore, stopped after it
        await using var restored = await fresh.StartAsync();
        Assert.Equal(saved, await FolderUnderTest.AskAsync(restored.Connections.Application, AllTanks));
        Assert.True(app.IsAlive);
    }

    [Fact]
    public async Task A_backup_with_no_app_running_starts_the_server_and_stops_it_again()
    {
        await FillAsync(_folder);

        await Backup(_folder).BackupAsync(File, FolderUnderTest.Stop);

        Assert.Equal(0, _folder.Pid);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, System.IO.File.GetUnixFileMode(File));
        Assert.False(System.IO.File.Exists($"{File}.part"));
    }

    [Fact]
    public async Task From_a_given_server_to_a_given_server()
    {
        var from = await server.EmptyDatabaseAsync(FolderUnderTest.Stop);
        var to = await server.EmptyDatabaseAsync(FolderUnderTest.Stop);
        await FolderUnderTest.AskAsync(from.Owner, Filled);

        await Backup(from).BackupAsync(File, FolderUnderTest.Stop);
        await Backup(to).RestoreAsync(File, FolderUnderTest.Stop);

        Assert.Equal(
            await FolderUnderTest.AskAsync(from.Owner, AllTanks),
            await FolderUnderTest.AskAsync(to.Application, AllTanks)
        );
    }

    [Fact]
    public async Task A_file_that_exists_is_not_overwritten()
    {
        await System.IO.File.WriteAllTextAsync(File, "last year's", FolderUnderTest.Stop);
        await FillAsync(_folder);

        Assert.Equal(
            "backup-exists",
            await RefusedAsync(() => Backup(_folder).BackupAsync(File, FolderUnderTest.Stop))
        );
        Assert.Equal("last year's", await System.IO.File.ReadAllTextAsync(File, FolderUnderTest.Stop));
    }

    [Fact]
    public async Task A_folder_without_a_database_is_not_backed_up_and_gets_none()
    {
        Assert.Equal(
            "nothing-there",
            await RefusedAsync(() => Backup(_folder).BackupAsync(File, FolderUnderTest.Stop))
        );
        Assert.False(Directory.Exists(_folder.Path));
    }

    [Fact]
    public async Task A_backup_into_a_folder_that_does_not_exist_says_so()
    {
        await FillAsync(_folder);

        var backup = () => Backup(_folder).BackupAsync($"{_folder.Root}/nowhere/club.backup", FolderUnderTest.Stop);

        Assert.Equal("backup-not-writable", await RefusedAsync(backup));
    }

    [Fact]
    public async Task Nothing_is_restored_over_tables_that_are_there()
    {
        var database = await server.EmptyDatabaseAsync(FolderUnderTest.Stop);
        await FolderUnderTest.AskAsync(database.Owner, Filled);
        await Backup(database).BackupAsync(File, FolderUnderTest.Stop);
        await FolderUnderTest.AskAsync(database.Owner, "DELETE FROM tanks");

        Assert.Equal(
            "place-not-empty",
            await RefusedAsync(() => Backup(database).RestoreAsync(File, FolderUnderTest.Stop))
        );
        Assert.Equal(0L, await FolderUnderTest.AskAsync(database.Owner, "SELECT count(*) FROM tanks"));
    }

    [Theory]
    [InlineData(0.5)] // its list of contents is whole, its end is missing
    [InlineData(0.001)]
    public async Task A_backup_that_was_cut_short_is_refused_and_nothing_is_changed(double kept)
    {
        var from = await server.EmptyDatabaseAsync(FolderUnderTest.Stop);
        var to = await server.EmptyDatabaseAsync(FolderUnderTest.Stop);
        await FolderUnderTest.AskAsync(from.Owner, Filled);
        await Backup(from).BackupAsync(File, FolderUnderTest.Stop);
        using (var cut = System.IO.File.OpenWrite(File))
        {
            cut.SetLength((long)(cut.Length * kept));
        }

        Assert.Equal(
            "backup-unreadable",
            await RefusedAsync(() => Backup(to).RestoreAsync(File, FolderUnderTest.Stop))
        );
        Assert.Null(await FolderUnderTest.AskAsync(to.Owner, "SELECT to_regclass('tanks')::text") as string);
    }

    [Fact]
    public async Task A_server_that_cannot_be_reached_says_so()
    {
        var nobody = new DatabaseAddress.Given(new("Host=/nowhere;Username=a", "Host=/nowhere;Username=a"));

        Assert.Equal(
            "not-reachable",
            await RefusedAsync(() => new PlainBackup(nobody).BackupAsync(File, FolderUnderTest.Stop))
        );
        Assert.False(System.IO.File.Exists($"{File}.part"));
    }

    private static PlainBackup Backup(FolderUnderTest folder) => new(new DatabaseAddress.InFolder(folder.Options));

    private static PlainBackup Backup(Connections given) => new(new DatabaseAddress.Given(given));

    private static async Task FillAsync(FolderUnderTest folder)
    {
        await using var cluster = await folder.StartAsync();
        await FolderUnderTest.AskAsync(cluster.Connections.Owner, Filled);
    }

    private static async Task<string> RefusedAsync(Func<Task> errand) =>
        (await Assert.ThrowsAsync<PrivateServerProblem>(errand)).Code;
}
