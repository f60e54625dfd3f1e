using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.House;

public sealed class WavedThroughTests(TestServer server) : IAsyncLifetime
{
    private const string NotPurged = "target-not-purged";

    private readonly FreshFloor _floor = new(server);
    private readonly List<Racked> _racked = [];
    private readonly Guid _batch = NewId();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        (await _floor.InsistAsync(Ann, Fill(K3, _batch, at: Ago(20)))).Stored();
    }

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Nine_of_ten_are_enough_and_eight_are_not()
    {
        await RackAsync(9);
        Assert.Equal(new(NotPurged, 9, 9), await CountAsync());
        Assert.False((await CountAsync())!.IsProposedOff);

        await RackAsync(1);
        Assert.Equal(new(NotPurged, 10, 10), await CountAsync());
        Assert.True((await CountAsync())!.IsProposedOff);

        await StrikeAsync();
        Assert.Equal(new(NotPurged, 10, 9), await CountAsync());
        Assert.True((await CountAsync())!.IsProposedOff);

        await StrikeAsync();
        Assert.Equal(new(NotPurged, 10, 8), await CountAsync());
        Assert.False((await CountAsync())!.IsProposedOff);
    }

    [Fact]
    public async Task Only_the_last_ten_count()
    {
        await RackAsync(1);
        await StrikeAsync();
        await RackAsync(10);

        Assert.Equal(new(NotPurged, 10, 10), await CountAsync());
    }

    [Fact]
    public async Task An_entry_that_was_corrected_counts_as_its_correction_does()
    {
        await RackAsync(1);
        var racked = _racked[^1];
        Corrected less = new(racked.Id, racked with { Left = Litres(0.5) }, "misread") { Id = NewId() };
        (await _floor.InsistAsync(Ann, less)).Stored();

        Assert.Equal(new(NotPurged, 2, 1), await CountAsync()); // heard twice, and only the correction stands
    }

    [Fact]
    public async Task What_is_switched_off_is_not_proposed_again_nor_is_a_stop()
    {
        await RackAsync(10);
        Assert.DoesNotContain("not-sanitized", (await AllAsync()).Select(c => c.Code)); // each fill went over this stop
        HouseKeeping house = new(_floor.Database, _floor.Rules);
        var rules = await house.RulesAsync(Stop);

        await house.ChangeAsync(rules with { SilentCautions = [NotPurged] }, Ann.Id, Stop);

        Assert.Null(await CountAsync());
    }

    // To and fro between two tanks, all of it each time, into air.
    private async Task RackAsync(int times)
    {
        for (var i = 0; i < times; i++)
        {
            var (from, to) = _racked.Count(r => !_struck.Contains(r.Id)) % 2 == 0 ? (K3, P2) : (P2, K3);
            Racked racked = new(from, to, _batch, Litres(900), Litres(0)) { Id = NewId() };
            (await _floor.InsistAsync(Ann, new Vented(to) { Id = NewId() })).Stored();
            (await _floor.InsistAsync(Ann, racked)).Stored();
            _racked.Add(racked);
        }
    }

    private readonly HashSet<Guid> _struck = [];

    private async Task StrikeAsync()
    {
        var last = _racked.Last(r => !_struck.Contains(r.Id));
        _struck.Add(last.Id);
        (await _floor.SendAsync(new Struck([last.Id], "It stayed") { Id = NewId() })).Stored();
    }

    private async Task<WavedThrough?> CountAsync() => (await AllAsync()).FirstOrDefault(c => c.Code is NotPurged);

    private Task<Domain.Listed<WavedThrough>> AllAsync() =>
        new Cautions(_floor.Database, _floor.Rules).WavedThroughAsync(Stop);
}
