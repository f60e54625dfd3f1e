using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Drills;

/// <summary>With a tenth of the counts: the same code as in full.</summary>
[Collection(nameof(Drills))]
public class BackupDrillTests
{
    [Fact]
    public async Task Nothing_acknowledged_before_a_backup_began_is_missing_from_what_it_restores()
    {
        var outcome = await BackupDrill.RunAsync(
            BackupDrill.InFull / 10,
            seed: 1125,
            Scratch.Root,
            TestContext.Current.CancellationToken
        );
        TestContext.Current.SendDiagnosticMessage("{0}", DrillReport.Text(outcome));
        Assert.True(outcome.IsPassed, DrillReport.Text(outcome));
    }
}
