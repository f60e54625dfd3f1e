using BrewFloor.Domain.Log;
using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Backups;

namespace BrewFloor.Web.Doctor;

/// <summary>What is fine and what is not: from what was seen alone, so that each can be tried.</summary>
public static class Checks
{
    // Ours: room to do something about it, and none.
    private const double FullEnoughToLook = 0.85;
    private const double TooFull = 0.95;

    private const int FewestZones = 100; // a machine without zone data knows UTC and little else

    /// <summary>Ours: more than an answer takes on its way, less than anybody notices.</summary>
    private static readonly TimeSpan ClocksAgree = TimeSpan.FromSeconds(2);

    /// <summary>What the log refuses as not having happened yet.</summary>
    private static readonly TimeSpan ClocksQuarrel = TimeSpan.FromMinutes(2);

    private static readonly TimeSpan LongWithoutBackup = TimeSpan.FromDays(7);

    public static Finding Database(DatabaseLook look) =>
        look.Pending == 0
            ? Finding.Fine("database", "database-fine", new Number("version", look.Version))
            : Finding.Bad(
                "database",
                "database-pending",
                new Number("version", look.Version),
                new Number("count", look.Pending)
            );

    /// <param name="of">disk, backup-disk.</param>
    /// <param name="folder">Where.</param>
    /// <param name="free">Bytes.</param>
    /// <param name="total">Bytes.</param>
    public static Finding Disk(string of, string folder, long free, long total)
    {
        var used = 1 - ((double)free / total);
        Number[] numbers =
        [
            new("folder", folder),
            new("share", Math.Round(used * 100)),
            new("free", Math.Round(free / 1e9, 1)),
        ];
        return used switch
        {
            >= TooFull => Finding.Bad(of, "disk-full", numbers),
            >= FullEnoughToLook => Finding.Look(of, "disk-filling", numbers),
            _ => Finding.Fine(of, "disk-fine", numbers),
        };
    }

    public static Finding Clock(DateTimeOffset server, DateTimeOffset database)
    {
        var apart = (server - database).Duration();
        var seconds = new Number("seconds", Math.Round(apart.TotalSeconds));
        return apart > ClocksQuarrel ? Finding.Bad("clock", "clocks-apart", seconds)
            : apart > ClocksAgree ? Finding.Look("clock", "clocks-apart", seconds)
            : Finding.Fine("clock", "clocks-agree");
    }

    /// <param name="zones">How many this machine knows.</param>
    /// <param name="site">The site's; empty: not known here.</param>
    public static Finding Zones(int zones, string site) =>
        zones >= FewestZones
            ? Finding.Fine("zones", site.Length == 0 ? "zones-there" : "zones-fine", new Number("zone", site))
            : Finding.Bad("zones", "zones-missing");

    public static Finding Proxy(DateTimeOffset? seenAt) =>
        seenAt is { } at
            ? Finding.Look("proxy", "proxy-seen", new Number("at", at))
            : Finding.Fine("proxy", "proxy-none");

    /// <param name="last">The newest that was made.</param>
    /// <param name="proven">The newest that was proven.</param>
    /// <param name="failed">The newest try made none.</param>
    /// <param name="now">By the server's clock.</param>
    public static Finding Backup(BackupNote? last, BackupNote? proven, bool failed, DateTimeOffset now)
    {
        if (last is null)
        {
            return Finding.Look("backup", failed ? "backup-failed" : "backup-none");
        }

        var age = new Number("age", BackupAge.Of(last, now));
        var provenAge = new Number("proven", proven is null ? null : BackupAge.Of(proven, now));
        return now - last.At > LongWithoutBackup ? Finding.Bad("backup", "backup-old", age)
            : last.Problem is "proof-differs" ? Finding.Bad("backup", "backup-differs", age)
            : proven is null ? Finding.Look("backup", "backup-never-proven", age)
            : !last.IsProven ? Finding.Look("backup", "backup-not-proven", age, provenAge)
            : failed ? Finding.Look("backup", "backup-failed-since", age)
            : now - last.At > BackupAge.TooOld ? Finding.Look("backup", "backup-old", age)
            : Finding.Fine("backup", "backup-proven", age);
    }
}
