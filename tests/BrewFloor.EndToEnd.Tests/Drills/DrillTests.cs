using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Drills;

/// <summary>The drills with a tenth of their counts: the same code as in full, the published app and a PostgreSQL of its own.</summary>
public class DrillTests
{
    private const int Seed = 1112;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_acknowledged_is_lost_doubled_or_half_written_when_the_app_is_killed()
    {
        var outcome = await KillDrill.RunAsync(KillDrill.InFull / 10, Seed, Scratch.Root, Stop);
        TestContext.Current.SendDiagnosticMessage("{0}", DrillReport.Text(outcome));
        Assert.True(outcome.IsPassed, DrillReport.Text(outcome));
    }

    [Fact]
    public async Task The_app_heals_by_itself_and_loses_nothing_when_its_PostgreSQL_is_killed()
    {
        var outcome = await PostgresDrill.RunAsync(PostgresDrill.InFull / 10, Seed, Scratch.Root, Stop);
        TestContext.Current.SendDiagnosticMessage("{0}", DrillReport.Text(outcome));
        Assert.True(outcome.IsPassed, DrillReport.Text(outcome));
    }
}
