using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Store.Tests.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Tests.Backups;

/// <summary>A backup proves itself: restored beside, folded anew, compared.</summary>
public sealed class BackupProofTests(TestServer server) : IAsyncLifetime
{
    private static readonly Passphrase Right = Passphrase.Of("four kettles under snow");

    private readonly FreshFloor _floor = new(server);
    private readonly FolderUnderTest _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string File => $"{_folder.Root}/club.backup";

    private DatabaseAddress Address => new DatabaseAddress.Given(_floor.Connections);

    private BackupRound Round => new(Address, _folder.Path, TimeProvider.System);

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        var batch = FreshFloor.NewId();
        await _floor.InsistAsync(FreshFloor.Ann, FreshFloor.Fill(FreshFloor.K3, batch, at: FreshFloor.Ago(5)));
        await _floor.SendAsync(FreshFloor.Received(FreshFloor.NewId()));
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, "Smells of apples", FreshFloor.Ago(2)));
    }

    public async ValueTask DisposeAsync()
    {
        await _floor.DisposeAsync();
        await _folder.DisposeAsync();
    }

    [Fact]
    public async Task A_sound_backup_is_proven_written_down_and_leaves_no_database_beside()
    {
        var before = await DatabasesAsync();

        var taken = await Round.TakeAsync(File, Right, isNightly: false, Stop);
        await BackupBook.WriteAsync(Address, taken.Note, Stop);

        Assert.True(taken.Note is { IsProven: true, Problem: null, Bytes: > 1000 }, taken.Problem);
        Assert.Equal(before, await DatabasesAsync());
        var last = await new BackupBook(_floor.Database).LastProvenAsync(Stop);
        Assert.Equal((taken.Note.Id, taken.Note.Bytes, File), (last!.Id, last.Bytes, last.File));
    }

    [Theory]
    [InlineData("UPDATE states SET state = state || '{\"heel_l\": 1.5}' WHERE kind = 'tank'", "states")]
    [InlineData("DELETE FROM states WHERE kind = 'culture'", "states")]
    [InlineData("UPDATE states SET entries = entries + 1", "states")]
    public async Task A_floor_whose_states_are_no_fold_of_its_log_is_not_proven(string broken, string table)
    {
        await _floor.AsOwnerAsync(broken);

        var taken = await Round.TakeAsync(File, Right, isNightly: false, Stop);

        Assert.Equal("proof-differs", taken.Note.Problem);
        Assert.Contains($"({table})", taken.Problem, StringComparison.Ordinal);
        Assert.True(taken.Note is { IsMade: true, IsProven: false } && System.IO.File.Exists(File));
    }

    [Fact]
    public async Task A_file_that_was_altered_since_is_not_proven()
    {
        await new SealedBackup(Address, _folder.Path).BackupAsync(File, Right, Stop);
        var bytes = await System.IO.File.ReadAllBytesAsync(File, Stop);
        bytes[^20] ^= 4;
        await System.IO.File.WriteAllBytesAsync(File, bytes, Stop);

        var proof = () => new BackupProof(Address).ProveAsync(File, Right, Stop);

        Assert.Equal("backup-altered", (await Assert.ThrowsAsync<PrivateServerProblem>(proof)).Code);
    }

    [Fact]
    public async Task A_login_that_may_make_no_database_keeps_the_backup_and_says_what_to_run()
    {
        var (name, floor) = ($"poor_{Guid.CreateVersion7():N}", _floor.Connections);
        await _floor.AsOwnerAsync(
            $"CREATE ROLE {name} LOGIN; GRANT SELECT ON ALL TABLES IN SCHEMA public TO {name}; GRANT SELECT ON ALL SEQUENCES IN SCHEMA public TO {name}"
        );
        var poor = new NpgsqlConnectionStringBuilder(floor.Owner) { Username = name }.ConnectionString;
        var round = new BackupRound(new DatabaseAddress.Given(new(poor, poor)), _folder.Path, TimeProvider.System);

        var taken = await round.TakeAsync(File, Right, isNightly: false, Stop);

        Assert.Equal("no-scratch-database", taken.Note.Problem);
        Assert.Contains("CREATEDB", taken.Problem, StringComparison.Ordinal);
        await _floor.AsOwnerAsync($"DROP OWNED BY {name}; DROP ROLE {name}");
    }

    [Fact]
    public async Task What_a_killed_proof_left_beside_is_swept_when_it_is_old_and_not_before()
    {
        var (old, young) = (Left(hours: 7), Left(hours: 5));
        await _floor.AsOwnerAsync($"CREATE DATABASE {old}");
        await _floor.AsOwnerAsync($"CREATE DATABASE {young}");

        await using (await ScratchDatabase.MakeAsync(_floor.Connections.Owner, folder: null, Stop)) { }

        Assert.DoesNotContain(old, await DatabasesAsync());
        Assert.Contains(young, await DatabasesAsync());
        await _floor.AsOwnerAsync($"DROP DATABASE {young}");
    }

    [Fact]
    public async Task Of_two_instances_one_has_its_turn()
    {
        var book = new BackupBook(_floor.Database);
        await using (await book.TakeTurnAsync(Stop))
        {
            Assert.Null(await book.TakeTurnAsync(Stop));
        }

        await using var next = await book.TakeTurnAsync(Stop);
        Assert.NotNull(next);
    }

    private static string Left(double hours) =>
        $"brewfloor_proof_{Guid.CreateVersion7(TimeProvider.System.GetUtcNow().AddHours(-hours)):N}";

    private async Task<string> DatabasesAsync() =>
        (
            await _floor.AskAsync<string>(
                "SELECT string_agg(datname, ' ' ORDER BY datname) FROM pg_database WHERE datname LIKE 'brewfloor_proof%'"
            )
        ) ?? "";
}
