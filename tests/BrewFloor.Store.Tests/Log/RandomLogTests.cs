using System.Collections.Immutable;
using System.Diagnostics;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tests.Log;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.Log;

public sealed class RandomLogTests(TestServer server, ITestOutputHelper output) : IAsyncLifetime
{
    private const int Each = 100;
    private const int Most = 20_000;

    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

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

        AssertSame(await log.FoldedAsync(), await log.KeptAsync());
        Assert.True(log.Random.Counts.Values.Min() >= Each, "A kind was stored too seldom for the test to say much.");
        Assert.InRange(log.Random.Stored.Count * 2, log.Tried, int.MaxValue);
        Assert.InRange(log.BackDated, Each, int.MaxValue);
    }

    [Fact]
    public async Task The_check_of_what_is_kept_can_fail()
    {
        var log = new RandomLog(_floor, seed: 119);
        await log.PlayAsync(l => l.Random.Stored.Count >= 40);
        var folded = await log.FoldedAsync();
        var kept = await log.KeptAsync();

        AssertSame(folded, kept);
        Assert.ThrowsAny<Exception>(() => AssertSame(PlayedFloor.Fold(log.Random.Stored.SkipLast(5)), kept));
    }

    [Fact]
    public async Task With_any_rule_of_the_order_left_out_the_log_folds_to_something_else()
    {
        var log = new RandomLog(_floor, seed: 122);
        await log.PlayAsync(l => l.Random.Stored.Count >= 400 && l.BackDated >= 40);
        var (lines, kept) = (await log.LinesAsync(), await log.KeptAsync());
        var seqs = lines.ToDictionary(l => l.Entry.Id, l => l.Seq);
        LogEntry[] standing = [.. AsItStands.Of(lines)];

        AssertSame(PlayedFloor.Fold(standing), kept);
        AssertOther(PlayedFloor.Fold(standing.OrderBy(entry => seqs[entry.Id])), kept); // as written, not as it happened
        AssertOther(PlayedFloor.Fold(AsItStands.Of(lines.Where(l => l.Entry is not Corrected))), kept);
        AssertOther(PlayedFloor.Fold(AsItStands.Of(lines.Where(l => l.Entry is not Struck))), kept);
        AssertOther(FoldedApart(standing), kept);
    }

    // Nobody hands anything over.
    private static ImmutableDictionary<Subject, State> FoldedApart(IEnumerable<LogEntry> entries) =>
        entries.Aggregate(
            ImmutableDictionary<Subject, State>.Empty,
            (states, entry) =>
                states.SetItems(
                    entry
                        .Subjects.Distinct()
                        .Select(s =>
                            KeyValuePair.Create(s, (states.GetValueOrDefault(s) ?? Things.Blank(s)).After(entry))
                        )
                )
        );

    private static void AssertOther(ImmutableDictionary<Subject, State> folded, Dictionary<Subject, string> kept) =>
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertSame(folded, kept));

    [Fact]
    public async Task The_whole_log_folded_anew_keeps_the_same_states_and_what_was_handed_over()
    {
        var log = new RandomLog(_floor, seed: 120);
        await log.PlayAsync(l => l.Random.Stored.Count >= 400);
        var (states, handed) = (await log.KeptAsync(), await HandedAsync());

        await using var owner = StoreSetup.DataSource(_floor.Connections.Owner);
        await Refolding.AllAsync(owner, Stop);

        Assert.Equal(states, await log.KeptAsync());
        Assert.Equal(handed, await HandedAsync());
    }

    private Task<string?> HandedAsync() =>
        _floor.AskAsync<string>(
            """
            SELECT string_agg(concat_ws('|', entry_id, place, taker_id, giver_id, kind, value), E'\n' ORDER BY entry_id, place)
            FROM handed_over WHERE until IS NULL
            """
        );

    private static void AssertSame(ImmutableDictionary<Subject, State> folded, Dictionary<Subject, string> kept)
    {
        foreach (var (subject, state) in folded)
        {
            Assert.Equal(FloorJson.Of(state), kept.GetValueOrDefault(subject, FloorJson.Of(Things.Blank(subject))));
        }
    }
}
