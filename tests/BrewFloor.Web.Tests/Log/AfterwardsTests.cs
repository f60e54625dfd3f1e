using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Web.Tests.Log;

/// <summary>What the log knows better later on is shown where it belongs.</summary>
public sealed class AfterwardsTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task What_an_entry_would_hear_today_stands_beside_it_on_the_tanks_timeline()
    {
        var tank = (await app.TankAsync("A1")).Id;
        var filled = FreshFloor.Fill(tank, FreshFloor.NewId(), at: FreshFloor.Ago(2));
        await app.AppendAsync(filled);
        Assert.Empty(await SeenAsync(filled));

        await app.AppendAsync(
            new PutOutOfService(tank, "Seal drips") { Id = FreshFloor.NewId(), At = FreshFloor.Ago(3) }
        );

        Assert.StartsWith("Seen afterwards: A1 ", Assert.Single(await SeenAsync(filled)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caution_that_stops_nobody_is_proposed_for_switching_off_to_the_owner_alone()
    {
        var (one, other, batch) = ((await app.TankAsync("A2")).Id, (await app.TankAsync("A3")).Id, FreshFloor.NewId());
        await app.AppendAsync(FreshFloor.Fill(one, batch));
        for (var i = 0; i < 10; i++)
        {
            Assert.Null(await ProposedAsync(Role.Owner));
            var (from, to) = i % 2 == 0 ? (one, other) : (other, one);
            await app.AppendAsync(new Vented(to) { Id = FreshFloor.NewId() });
            await app.AppendAsync(
                new Racked(from, to, batch, FreshFloor.Litres(900), FreshFloor.Litres(0)) { Id = FreshFloor.NewId() }
            );
        }

        var name = Web.Shell.Reader.Stranger.Head(Objection.Caution("target-not-purged"));
        Assert.Contains(name, await ProposedAsync(Role.Owner), StringComparison.Ordinal);
        Assert.Null(await ProposedAsync(Role.Brewer));
    }

    private async Task<string?> ProposedAsync(Role role) =>
        (await app.As(role).PageAsync("/more")).QuerySelector("#proposed-off") is { } line ? line.Words() : null;

    private async Task<IEnumerable<string>> SeenAsync(LogEntry entry) =>
        [
            .. (await app.As(Role.Viewer).PageAsync("/tanks/A1"))
                .QuerySelectorAll($"#e-{entry.Id} .afterwards")
                .Select(e => e.Words()),
        ];
}
