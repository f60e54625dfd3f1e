using System.Diagnostics;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.Log;

public sealed class RandomLogTests(TestServer server, ITestOutputHelper output) : IAsyncLifetime
{
    private const int Each = 100;
    private const int Most = 20_000;

    private readonly FreshFloor _floor = new(server);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task What_the_door_keeps_is_what_the_log_folds_to()
    {
        var watch = Stopwatch.StartNew();
        var log = new RandomLog(_floor, seed: 118);
        await log.PlayAsync(l => l.Random.Counts.Values.Min() >= Each || l.Tried >= Most);

        output.WriteLine(
            $"{log.Random.Stored.Count} of {log.Tried} stored, {log.BackDated} back-dated, {watch.Elapsed}"
        );
        foreach (var (kind, count) in log.Random.Counts.OrderBy(c => c.Value))
        {
            output.WriteLine($"{kind}: {count}");
        }

        await AssertSameAsync(log);
        Assert.True(log.Random.Counts.Values.Min() >= Each, "A kind was stored too seldom for the test to say much.");
        Assert.InRange(log.Random.Stored.Count * 2, log.Tried, int.MaxValue);
        Assert.InRange(log.BackDated, Each, int.MaxValue);
    }

    private static async Task AssertSameAsync(RandomLog log)
    {
        var folded = (await log.FoldedAsync()).ToDictionary(s => s.Key, s => FloorJson.Of(s.Value));
        var kept = await log.KeptAsync();
        foreach (var (subject, state) in folded)
        {
            Assert.Equal(state, kept.GetValueOrDefault(subject, FloorJson.Of(Things.Blank(subject))));
        }
    }
}
