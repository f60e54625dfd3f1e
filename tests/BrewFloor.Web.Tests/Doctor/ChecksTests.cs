using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Doctor;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tests.Doctor;

/// <summary>What the doctor calls fine, worth a look, and bad.</summary>
public sealed class ChecksTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(16, Health.Fine)]
    [InlineData(15, Health.Look)]
    [InlineData(6, Health.Look)]
    [InlineData(5, Health.Bad)]
    [InlineData(0, Health.Bad)]
    public void A_disk_is_looked_at_from_85_percent_and_bad_from_95(long free, Health health) =>
        Assert.Equal(health, Checks.Disk("disk", "/srv", free, 100).Health);

    [Theory]
    [InlineData(0, Health.Fine)]
    [InlineData(-2, Health.Fine)]
    [InlineData(3, Health.Look)]
    [InlineData(-121, Health.Bad)]
    public void Clocks_may_be_two_seconds_apart_and_never_two_minutes(int seconds, Health health) =>
        Assert.Equal(health, Checks.Clock(Now.AddSeconds(seconds), Now).Health);

    [Theory]
    [InlineData(0, Health.Fine)]
    [InlineData(1, Health.Bad)]
    public void Tables_that_are_behind_are_bad(int pending, Health health) =>
        Assert.Equal(health, Checks.Database(new DatabaseLook("15.18", Now, pending)).Health);

    [Theory]
    [InlineData(400, Health.Fine)]
    [InlineData(1, Health.Bad)]
    public void A_machine_without_zone_data_is_bad(int zones, Health health) =>
        Assert.Equal(health, Checks.Zones(zones, "Europe/Berlin").Health);

    [Theory]
    [InlineData(6, 6, null, false, Health.Fine, "backup-proven")]
    [InlineData(6, 6, null, true, Health.Look, "backup-failed-since")]
    [InlineData(27, 27, null, false, Health.Look, "backup-old")]
    [InlineData(170, 170, null, false, Health.Bad, "backup-old")]
    [InlineData(6, 30, "no-room-to-prove", false, Health.Look, "backup-not-proven")]
    [InlineData(6, null, "no-room-to-prove", false, Health.Look, "backup-never-proven")]
    [InlineData(6, 30, "proof-differs", false, Health.Bad, "backup-differs")]
    [InlineData(null, null, null, false, Health.Look, "backup-none")]
    [InlineData(null, null, null, true, Health.Look, "backup-failed")]
    public void A_backup_is_fine_when_it_is_of_last_night_and_proven(
        int? madeHoursAgo,
        int? provenHoursAgo,
        string? problem,
        bool failed,
        Health health,
        string code
    )
    {
        var proven = provenHoursAgo is { } p ? Note(p, problem: null) : null;
        var last = madeHoursAgo is { } m ? Note(m, problem) : null;

        var finding = Checks.Backup(last, proven, failed, Now);

        Assert.Equal((health, code), (finding.Health, finding.Code));
        Assert.DoesNotContain("{", finding.Sentence(Reader.Stranger), StringComparison.Ordinal);
    }

    private static BackupNote Note(int hoursAgo, string? problem) =>
        new(Now.AddHours(-hoursAgo), "club.backup", 1, problem is null ? Now : null, problem, IsNightly: true);
}
