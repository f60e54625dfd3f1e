using BrewFloor.Domain.People;
using BrewFloor.Store.Backups;
using BrewFloor.Store.House;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Backups;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Npgsql;

namespace BrewFloor.Web.Tests.Backups;

/// <summary>Night after night, and what brewers see of it.</summary>
public sealed class NightlyBackupTests(FloorApp app) : IClassFixture<FloorApp>, IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-nightly-");
    private readonly FakeTimeProvider _clock = new(TimeProvider.System.GetUtcNow());

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Each_night_one_is_made_and_proven_and_the_oldest_goes()
    {
        Assert.Equal("Not backed up yet.", await LineAsync(Role.Brewer));
        var nightly = Nightly(keep: 2);

        var first = await nightly.LookAsync(FloorApp.Stop);
        Assert.True(first is { IsProven: true, IsNightly: true }, first?.Problem);
        Assert.Null(await nightly.LookAsync(FloorApp.Stop)); // there is one for tonight
        Assert.Matches(@"^Backed up \d+\smin ago, proven\.$", await LineAsync(Role.Owner));
        Assert.Null(await LineAsync(Role.Helper));

        for (var night = 0; night < 2; night++)
        {
            await PutBackADayAsync();
            Assert.True(await nightly.LookAsync(FloorApp.Stop) is { IsProven: true });
        }

        Assert.Equal(2, _folder.GetFiles().Length);
        Assert.False(File.Exists(first!.File));
        Assert.Equal(2, (await app.Get<BackupBook>().NightlyAsync(FloorApp.Stop)).Count);
    }

    // The moment a backup holds is the database's: so the book is put back, not the clock on.
    private async Task PutBackADayAsync()
    {
        _clock.Advance(TimeSpan.FromSeconds(1)); // another name for the next file
        await using var command = app.Get<NpgsqlDataSource>()
            .CreateCommand("UPDATE backups SET at = at - interval '1 day'");
        await command.ExecuteNonQueryAsync(FloorApp.Stop);
    }

    private NightlyBackup Nightly(int keep)
    {
        var settings = new BackupSettings(_folder.FullName, 3, keep, Passphrase.Of("four kettles under snow"));
        var round = new BackupRound(app.Get<DatabaseAddress>(), _folder.FullName + "/data", _clock);
        return new(
            settings,
            round,
            app.Get<BackupBook>(),
            app.Get<RulesOnHand>(),
            _clock,
            NullLogger<NightlyBackup>.Instance
        );
    }

    private async Task<string?> LineAsync(Role role) =>
        (await app.As(role).PageAsync("/")).QuerySelector("#backed-up") is { } line ? line.Words() : null;
}
