using System.Text;
using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Store.Tests.PrivateServer;

namespace BrewFloor.Store.Tests.Backups;

/// <summary>A floor goes into a file and comes out of it: whole, or not at all and with the reason.</summary>
public sealed class SealedBackupTests(TestServer server) : IAsyncLifetime
{
    private static readonly Passphrase Right = Passphrase.Of("four kettles under snow");

    private readonly FreshFloor _floor = new(server);
    private readonly FolderUnderTest _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string File => $"{_folder.Root}/club.backup";

    private string Keys => $"{_folder.Path}/keys";

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, "Smells of apples", FreshFloor.Ago(2)));
        Directory.CreateDirectory(Keys);
        await System.IO.File.WriteAllTextAsync($"{Keys}/key-1.xml", "<key>of the cookies</key>", Stop);
    }

    public async ValueTask DisposeAsync()
    {
        await _floor.DisposeAsync();
        await _folder.DisposeAsync();
    }

    [Fact]
    public async Task A_floor_comes_back_table_by_table_with_its_keys_in_a_fresh_folder()
    {
        var made = await BackupAsync();
        await using var fresh = new FolderUnderTest();

        var restored = await new SealedRestore(new DatabaseAddress.InFolder(fresh.Options), fresh.Path).RestoreAsync(
            File,
            Right,
            Stop
        );

        Assert.Equal(0, fresh.Pid); // started for the restore, stopped after it
        Assert.Empty(restored.DifferFrom(made.Tally));
        Assert.True(restored.Tables["entries"].Rows > 0 && restored.Rows > 5);
        Assert.Equal(
            "<key>of the cookies</key>",
            await System.IO.File.ReadAllTextAsync($"{fresh.Path}/keys/key-1.xml", Stop)
        );
        Assert.Empty(Directory.GetDirectories(fresh.Path, "restored*"));
        await using var app = await fresh.StartAsync();
        Assert.Equal(
            "Smells of apples",
            await FolderUnderTest.AskAsync(app.Connections.Application, "SELECT max(note) FROM entries")
        );
    }

    [Fact]
    public async Task A_floor_that_was_started_and_that_nobody_owns_yet_is_an_empty_place()
    {
        await BackupAsync();
        var to = await server.NewDatabaseAsync(Stop);

        await Restore(to).RestoreAsync(File, Right, Stop);

        Assert.Equal(
            "Smells of apples",
            await FolderUnderTest.AskAsync(to.Application, "SELECT max(note) FROM entries")
        );
        await Migrator.MigrateAsync(to.Owner, "Europe/Berlin", Stop); // as the next start does
    }

    [Fact]
    public async Task A_row_that_differs_is_noticed()
    {
        var before = await Tally.AtAsync(_floor.Connections.Owner, Tally.OfTablesAsync, Stop);
        await _floor.AsOwnerAsync("UPDATE site SET altitude_m = altitude_m + 0.001");
        var after = await Tally.AtAsync(_floor.Connections.Owner, Tally.OfTablesAsync, Stop);

        Assert.Equal(["site"], after.DifferFrom(before));
        Assert.Equal(before.Rows, after.Rows);
    }

    [Fact]
    public async Task What_is_written_while_the_backup_is_taken_is_in_all_of_it_or_in_nothing_of_it()
    {
        await using var snapshot = await Snapshot.TakeAsync(_floor.Connections.Owner, Stop);
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, "A moment later", FreshFloor.Ago(1)));

        var seen = await snapshot.TallyAsync(Stop);

        Assert.Equal(await _floor.AskAsync<long>("SELECT count(*) FROM entries") - 1, seen.Tables["entries"].Rows);
    }

    [Fact]
    public async Task No_word_of_the_floor_or_its_keys_can_be_read_in_the_file_and_only_its_owner_may_open_it()
    {
        await BackupAsync();

        var bytes = await System.IO.File.ReadAllBytesAsync(File, Stop);
        foreach (var word in (string[])["apples", "PGDMP", "entries", "of the cookies", "key-1"])
        {
            Assert.Equal(-1, bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(word)));
        }

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, System.IO.File.GetUnixFileMode(File));
        Assert.False(System.IO.File.Exists($"{File}.part"));
    }

    [Fact]
    public async Task A_wrong_passphrase_a_cut_an_altered_and_a_strange_file_restore_nothing_and_make_no_database()
    {
        await BackupAsync();
        var whole = await System.IO.File.ReadAllBytesAsync(File, Stop);
        await using var fresh = new FolderUnderTest();
        var restore = new SealedRestore(new DatabaseAddress.InFolder(fresh.Options), fresh.Path);

        Assert.Equal(
            "wrong-passphrase",
            await RefusedAsync(() => restore.RestoreAsync(File, Passphrase.Of("rain"), Stop))
        );
        Assert.Equal("backup-missing", await RefusedAsync(() => restore.RestoreAsync(File + "s", Right, Stop)));
        await System.IO.File.WriteAllBytesAsync(File, whole[..^100], Stop);
        Assert.Equal("backup-cut-short", await RefusedAsync(() => restore.RestoreAsync(File, Right, Stop)));
        whole[^100] ^= 1;
        await System.IO.File.WriteAllBytesAsync(File, whole, Stop);
        Assert.Equal("backup-altered", await RefusedAsync(() => restore.RestoreAsync(File, Right, Stop)));
        await System.IO.File.WriteAllTextAsync(File, "a shopping list, rather long so that it is not empty", Stop);
        Assert.Equal("not-a-backup", await RefusedAsync(() => restore.RestoreAsync(File, Right, Stop)));
        Assert.False(Directory.Exists(fresh.Path));
    }

    [Fact]
    public async Task A_backup_of_tables_that_this_version_does_not_know_is_refused()
    {
        await _floor.AsOwnerAsync("""INSERT INTO "__EFMigrationsHistory" VALUES ('29991231000000_NotYet', '20.0')""");
        var newer = new SealedBackup(new DatabaseAddress.Given(_floor.Connections), _folder.Path);

        Assert.Equal("backup-newer", await RefusedAsync(() => newer.BackupAsync(File, Right, Stop)));
    }

    [Fact]
    public async Task Nothing_is_restored_where_somebody_has_something_or_where_the_app_runs()
    {
        await BackupAsync();
        var taken = await server.NewDatabaseAsync(Stop);
        await FolderUnderTest.AskAsync(
            taken.Owner,
            "INSERT INTO batches (id, number, version, thing) VALUES (gen_random_uuid(), 118, 1, '{}')"
        );
        var (strange, used) = (await server.EmptyDatabaseAsync(Stop), await server.NewDatabaseAsync(Stop));
        await FolderUnderTest.AskAsync(strange.Owner, "CREATE TABLE invoices (n int)");
        await using var app = Connections.Alone(used.Application);
        await app.OpenAsync(Stop);

        Assert.Equal("place-not-empty", await RefusedAsync(() => Restore(taken).RestoreAsync(File, Right, Stop)));
        Assert.Equal("place-not-empty", await RefusedAsync(() => Restore(strange).RestoreAsync(File, Right, Stop)));
        Assert.Equal("place-in-use", await RefusedAsync(() => Restore(used).RestoreAsync(File, Right, Stop)));
        Assert.Equal(118, await FolderUnderTest.AskAsync(taken.Owner, "SELECT number FROM batches"));
    }

    [Fact]
    public async Task What_comes_back_counts_and_the_servers_own_files_and_older_backups_are_left_out()
    {
        Directory.CreateDirectory($"{_folder.Path}/backups");
        await System.IO.File.WriteAllTextAsync($"{_folder.Path}/app.lock", "", Stop);
        await System.IO.File.WriteAllTextAsync($"{_folder.Path}/postgres.log", "words", Stop);
        await System.IO.File.WriteAllTextAsync($"{_folder.Path}/backups/old", "BrewFloor backup 1 and more", Stop);
        System.IO.File.CreateSymbolicLink($"{_folder.Path}/elsewhere", "/etc/hostname");
        Assert.Equal(["keys/key-1.xml"], new DataFiles(_folder.Path).Names());
        await BackupAsync();
        await using var other = new FolderUnderTest();
        Directory.CreateDirectory($"{other.Path}/keys");
        await System.IO.File.WriteAllTextAsync($"{other.Path}/keys/key-1.xml", "there before", Stop);
        var to = new DatabaseAddress.Given(await server.EmptyDatabaseAsync(Stop));

        await new SealedRestore(to, other.Path).RestoreAsync(File, Right, Stop);

        Assert.Equal(
            await System.IO.File.ReadAllTextAsync($"{_folder.Path}/keys/key-1.xml", Stop),
            await System.IO.File.ReadAllTextAsync($"{other.Path}/keys/key-1.xml", Stop)
        );
    }

    private Task<BackedUp> BackupAsync() =>
        new SealedBackup(new DatabaseAddress.Given(_floor.Connections), _folder.Path).BackupAsync(File, Right, Stop);

    private SealedRestore Restore(Connections to) => new(new DatabaseAddress.Given(to), $"{_folder.Root}/fresh");

    private static async Task<string> RefusedAsync(Func<Task> errand) =>
        (await Assert.ThrowsAsync<PrivateServerProblem>(errand)).Code;
}
