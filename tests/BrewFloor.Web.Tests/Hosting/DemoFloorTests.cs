using BrewFloor.DemoSeed;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Hosting;
using Microsoft.Extensions.DependencyInjection;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>The demo goes through the same door as everybody.</summary>
public sealed class DemoFloorTests(TestServer server) : IAsyncLifetime
{
    private readonly FloorApp _app = new(server);

    public async ValueTask InitializeAsync() => await _app.StartEmptyAsync();

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task The_whole_demo_goes_through_the_door_and_only_once()
    {
        var before = TimeProvider.System.GetUtcNow();
        var demo = ActivatorUtilities.CreateInstance<DemoFloor>(_app.Services);

        Assert.True(await demo.FillAsync(FloorApp.Stop));
        var stored = await _app.EntriesAsync();
        Assert.False(await demo.FillAsync(FloorApp.Stop));

        Assert.InRange(
            stored,
            DemoScenario.For(before, TimeZoneInfo.Local).Log.Count,
            DemoScenario.For(TimeProvider.System.GetUtcNow(), TimeZoneInfo.Local).Log.Count
        );
        Assert.Equal(stored, await _app.EntriesAsync());
        Assert.Equal(EntryKinds.ByName.Count, await _app.AskAsync<long>("SELECT count(DISTINCT kind) FROM entries"));
    }
}
