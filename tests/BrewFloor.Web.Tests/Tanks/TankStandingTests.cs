using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Tanks;

/// <summary>What a person must know before a hand is on a tank stands on its page.</summary>
public sealed class TankStandingTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task A_tank_that_was_shut_and_not_read_since_says_that_its_pressure_is_not_known()
    {
        var tank = await app.TankAsync("W1");
        await app.AppendAsync(
            Fill(tank.Id, Guid.CreateVersion7(), at: Ago(5)),
            new Closed(tank.Id)
            {
                Id = NewId(),
                At = Ago(4),
                Closure = Closure.Sealed,
            }
        );
        Assert.Contains("Not known: read the gauge", await StandingAsync("W1"), StringComparison.Ordinal);

        await app.AppendAsync(
            new PressureTaken(tank.Id, UnitsNet.Pressure.FromBars(0.8)) { Id = NewId(), At = Ago(3) }
        );

        Assert.Contains("0.80 bar, read", await StandingAsync("W1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_with_a_tank_stands_there_and_nothing_else_does()
    {
        var tank = await app.TankAsync("W2");
        Assert.Equal("How it is closed Open Gas in it Air", await StandingAsync("W2"));

        await app.AppendAsync(
            new PartsTakenOff(tank.Id, "bottom valve") { Id = NewId(), At = Ago(3) },
            new Exposed(tank.Id, ExposureKind.Allergen, "hazelnut") { Id = NewId(), At = Ago(2) }
        );

        var said = await StandingAsync("W2");
        Assert.Contains("Parts off since", said, StringComparison.Ordinal);
        Assert.Contains("Met hazelnut", said, StringComparison.Ordinal);
    }

    private async Task<string> StandingAsync(string code)
    {
        var page = await app.As(Role.Viewer).PageAsync($"/tanks/{code}");
        var said = page.QuerySelectorAll("#standing dt, #standing dd").Select(word => word.TextContent);
        return string.Join(' ', said).Replace('\u00a0', ' ');
    }
}
