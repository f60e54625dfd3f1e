using BrewFloor.Store.Tests.Log;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.Releases;

/// <summary>Makes the dump of the release that is about to be, as tests/releases/README.md tells.</summary>
public sealed class MakeReleaseDump(TestServer server) : IAsyncLifetime
{
    private const string Unused = "(SELECT id FROM tanks WHERE id NOT IN (SELECT subject_id FROM entry_subjects))";

    private readonly FreshFloor _floor = new(server);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_floor_with_every_kind_of_entry_on_it_is_written_down_and_read_back()
    {
        var log = new RandomLog(_floor, seed: 8);
        await log.PlayAsync(l => l.Random.Counts.Values.Min() >= 1 && l.BackDated >= 3);
        await _floor.AsOwnerAsync(
            $"DELETE FROM thing_changes WHERE thing_id IN {Unused}; DELETE FROM tanks WHERE id IN {Unused}"
        );

        var file = Path.Combine(AppContext.BaseDirectory, "floor.sql");
        await ReleaseDump.WriteAsync(_floor.Connections.Owner, file);

        TestContext.Current.TestOutputHelper!.WriteLine($"{file}: {new FileInfo(file).Length} bytes");
        var empty = await server.EmptyDatabaseAsync(TestContext.Current.CancellationToken);
        await ReleaseDump.RestoreAsync(empty.Owner, file);
        Assert.Equal(
            await ReleasesTests.StatesAsync(_floor.Connections.Owner),
            await ReleasesTests.StatesAsync(empty.Owner)
        );
    }
}
