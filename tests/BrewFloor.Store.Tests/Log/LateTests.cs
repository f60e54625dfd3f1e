using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Entries that are logged late, and the floor as it was.</summary>
public sealed class LateTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);
    private readonly Guid _batch = NewId();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_late_fill_before_anothers_fill_is_refused_with_the_one_it_makes_impossible()
    {
        var later = Fill(K3, NewId(), at: Ago(2));
        (await _floor.InsistAsync(Ann, later)).Stored();

        var refused = await _floor.InsistAsync(Ann, Fill(K3, _batch, at: Ago(4)));

        Assert.Equal("later-impossible", refused.Codes()[^1]);
    }

    [Fact]
    public async Task A_late_reading_is_not_what_is_read_last()
    {
        (await _floor.SendAsync(Warm(20, Ago(1)))).Stored();
        (await _floor.SendAsync(Warm(12, Ago(3)))).Stored();

        Assert.Equal(20, (await _floor.TankAsync(K3)).Temperature!.Value.Value.DegreesCelsius);
        Assert.Equal(12, (await AsItWasAsync(Ago(2))).Temperature!.Value.Value.DegreesCelsius);
    }

    [Fact]
    public async Task What_a_later_entry_would_hear_now_is_kept_beside_it_and_undoes_nothing()
    {
        var filled = Fill(K3, _batch, at: Ago(2));
        (await _floor.InsistAsync(Ann, filled)).Stored();
        var before = (await _floor.Lines.EntryAsync(filled.Id, Stop))!;
        Assert.Empty(before.SeenAfterwards);

        (await _floor.InsistAsync(Ann, new PutOutOfService(K3, "Seal drips") { Id = NewId(), At = Ago(3) })).Stored();

        var after = (await _floor.Lines.EntryAsync(filled.Id, Stop))!;
        Assert.Contains("out-of-service", after.SeenAfterwards.Select(o => o.Code));
        Assert.Equal(before.Objections, after.Objections);
        Assert.Equal(_batch, (await _floor.TankAsync(K3)).BatchId);
    }

    [Fact]
    public async Task How_far_back_one_may_write_is_by_role()
    {
        Assert.Equal(["too-far-back"], (await _floor.SendAsync(Cem, Warm(12, Ago(25)))).Codes());
        (await _floor.SendAsync(Ben, Warm(12, Ago(25)))).Stored();
        Assert.Equal(["too-far-back"], (await _floor.SendAsync(Ben, Warm(12, Ago(24 * 31)))).Codes());
        (await _floor.SendAsync(Ann, Warm(12, Ago(24 * 31)))).Stored();
    }

    [Fact]
    public async Task With_limits_of_years_a_helper_writes_of_any_day()
    {
        Store.House.HouseKeeping house = new(_floor.Database, _floor.Rules);
        var rules = await house.RulesAsync(Stop);
        var wide = rules with { HelperBackdates = TimeSpan.FromDays(999), BrewerBackdates = TimeSpan.FromDays(999) };
        await house.ChangeAsync(wide, Ann.Id, Stop);

        (await _floor.SendAsync(Cem, Warm(12, Ago(25)))).Stored();
        (await _floor.SendAsync(Ben, Warm(12, Ago(24 * 31)))).Stored();
    }

    [Fact]
    public async Task What_changes_nothing_for_later_entries_leaves_nothing_beside_them()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, _batch, at: Ago(2)))).Stored();

        (await _floor.InsistAsync(Ann, Warm(12, Ago(3)))).Stored();

        Assert.Equal(0L, await _floor.AskAsync<long>("SELECT count(*) FROM seen_afterwards"));
    }

    [Fact]
    public async Task As_it_was_is_by_what_is_known_now_or_was_known_then()
    {
        var reading = Warm(20, Ago(3));
        var first = (await _floor.SendAsync(reading)).Stored();
        var then = (await _floor.Lines.EntryAsync(first[0].Id, Stop))!.Recorded;
        var anew = reading with { Temperature = UnitsNet.Temperature.FromDegreesCelsius(10) };
        (await _floor.SendAsync(new Corrected(reading.Id, anew, "misread") { Id = NewId() })).Stored();

        Assert.Equal(10, (await AsItWasAsync(Ago(2))).Temperature!.Value.Value.DegreesCelsius);
        Assert.Equal(20, (await AsItWasAsync(Ago(2), then)).Temperature!.Value.Value.DegreesCelsius);
        Assert.Null((await AsItWasAsync(Ago(4))).Temperature);
        Assert.Null((await AsItWasAsync(Ago(2), then.AddSeconds(-1))).Temperature);
    }

    [Fact]
    public async Task Snapshots_are_made_every_200_entries_and_dropped_when_something_comes_before_them()
    {
        var start = Ago(20);
        foreach (var some in Enumerable.Range(0, 450).Chunk(50))
        {
            (await _floor.SendAsync([.. some.Select(i => Warm(i / 100.0, start.AddSeconds(i * 10)))])).Stored();
        }

        Assert.Equal("200,400", await SnapshotsAsync());
        Assert.Equal(3.0, (await AsItWasAsync(start.AddSeconds(3000))).Temperature!.Value.Value.DegreesCelsius);

        (await _floor.SendAsync(Warm(1, start.AddSeconds(2995)))).Stored();

        Assert.Equal("200,400", await SnapshotsAsync());
        Assert.Equal(3.0, (await AsItWasAsync(start.AddSeconds(3000))).Temperature!.Value.Value.DegreesCelsius);
        Assert.Equal(1, (await AsItWasAsync(start.AddSeconds(2999))).Temperature!.Value.Value.DegreesCelsius);
        Assert.Equal(
            start.AddSeconds(3980).UtcDateTime, // the 400th is now the one that was the 399th
            await _floor.AskAsync<DateTime>("SELECT at FROM snapshots WHERE entries = 400")
        );
    }

    [Fact]
    public async Task A_snapshot_that_is_wrong_shows_in_the_floor_as_it_was()
    {
        var start = Ago(20);
        (
            await _floor.SendAsync([.. Enumerable.Range(0, 201).Select(i => Warm(i / 100.0, start.AddSeconds(i * 10)))])
        ).Stored();
        await _floor.AskAsync<int?>("UPDATE snapshots SET state = state || '{\"closure\": \"sealed\"}' RETURNING 1");

        Assert.Equal(Closure.Sealed, (await AsItWasAsync(Ago(0))).Closure); // so it is read, and the test above can fail
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)] // kept, it would hide what was logged late
    public async Task A_snapshot_is_dropped_when_something_comes_before_it(bool isKept)
    {
        var start = Ago(20);
        (
            await _floor.SendAsync([.. Enumerable.Range(0, 200).Select(i => Warm(20, start.AddSeconds(i * 10)))])
        ).Stored();
        if (isKept)
        {
            await _floor.AsOwnerAsync(
                """
                CREATE FUNCTION keep() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RETURN NULL; END';
                CREATE TRIGGER tr_keep BEFORE DELETE ON snapshots FOR EACH ROW EXECUTE FUNCTION keep();
                """
            );
        }

        PutOutOfService late = new(K3, "Seal drips") { Id = NewId(), At = start.AddSeconds(5) };
        (await _floor.SendAsync(late)).Stored();

        Assert.Equal(isKept, (await AsItWasAsync(Ago(0))).OutOfService is null);
        Assert.NotNull((await _floor.TankAsync(K3)).OutOfService);
    }

    private async Task<TankState> AsItWasAsync(DateTimeOffset at, DateTimeOffset? known = null) =>
        (TankState)(await _floor.Reader.AsItWasAsync(Subject.Tank(K3), at, known, Stop)).State;

    private Task<string?> SnapshotsAsync() =>
        _floor.AskAsync<string>("SELECT string_agg(entries::text, ',' ORDER BY entries) FROM snapshots");

    private static TemperatureTaken Warm(double celsius, DateTimeOffset at) =>
        new(K3, UnitsNet.Temperature.FromDegreesCelsius(celsius)) { Id = NewId(), At = at };
}
