using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Drills;

/// <summary>With a tenth of the counts: the same code as in full, the published app and a PostgreSQL of its own.</summary>
[Collection(nameof(Drills))]
public class KillDrillTests
{
    [Fact]
    public async Task Nothing_acknowledged_is_lost_doubled_or_half_written_when_the_app_is_killed()
    {
        var outcome = await KillDrill.RunAsync(
            KillDrill.InFull / 10,
            seed: 1112,
            Scratch.Root,
            TestContext.Current.CancellationToken
        );
        TestContext.Current.SendDiagnosticMessage("{0}", DrillReport.Text(outcome));
        Assert.True(outcome.IsPassed, DrillReport.Text(outcome));
    }
}
