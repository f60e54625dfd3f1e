using BrewFloor.Store.Backups;
using BrewFloor.Store.House;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Backups;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Doctor;

/// <summary>Looks at everything the floor stands on, from within the app.</summary>
public sealed class Checkup(
    NpgsqlDataSource database,
    BackupBook book,
    RulesOnHand rules,
    ProxySeen proxy,
    StartOptions options,
    TimeProvider clock,
    IServiceProvider services
)
{
    public async Task<IReadOnlyList<Finding>> FindAsync(CancellationToken stop)
    {
        var backups = services.GetService<BackupSettings>()?.Folder;
        return
        [
            .. await OfDatabaseAsync(database, clock, stop),
            .. OfMachine(options.DataFolder, backups, rules.Zone.Id),
            Checks.Proxy(proxy.At),
            await OfBackupAsync(book, clock, stop),
        ];
    }

    internal static async Task<IReadOnlyList<Finding>> OfDatabaseAsync(
        NpgsqlDataSource database,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var look = await DatabaseLook.TakeAsync(database, stop);
        return [Checks.Database(look), Checks.Clock(clock.GetUtcNow(), look.Clock)];
    }

    internal static IEnumerable<Finding> OfMachine(string data, string? backups, string zone)
    {
        yield return OfDisk("disk", data);
        if (backups is not null)
        {
            yield return OfDisk("backup-disk", backups);
        }

        yield return Checks.Zones(TimeZoneInfo.GetSystemTimeZones().Count, zone);
    }

    internal static async Task<Finding> OfBackupAsync(BackupBook book, TimeProvider clock, CancellationToken stop)
    {
        var nightly = await book.NightlyAsync(stop);
        return Checks.Backup(
            await book.LastMadeAsync(stop),
            await book.LastProvenAsync(stop),
            nightly is [{ IsMade: false }, ..],
            clock.GetUtcNow()
        );
    }

    private static Finding OfDisk(string of, string folder)
    {
        var there = folder;
        while (!Directory.Exists(there))
        {
            there = Path.GetDirectoryName(there)!; // not made yet: its disk is there all the same
        }

        var drive = new DriveInfo(there);
        return Checks.Disk(of, folder, drive.AvailableFreeSpace, drive.TotalSize);
    }
}
