using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Drills;

/// <summary>With a tenth of the counts: the same code as in full, the published app and a PostgreSQL of its own.</summary>
[Collection(nameof(Drills))]
public class PostgresDrillTests
{
    [Fact]
    public async Task The_app_heals_by_itself_and_loses_nothing_when_its_PostgreSQL_is_killed()
    {
        var outcome = await PostgresDrill.RunAsync(
            PostgresDrill.InFull / 10,
            seed: 1112,
            Scratch.Root,
            TestContext.Current.CancellationToken
        );
        TestContext.Current.SendDiagnosticMessage("{0}", DrillReport.Text(outcome));
        Assert.True(outcome.IsPassed, DrillReport.Text(outcome));
    }
}
