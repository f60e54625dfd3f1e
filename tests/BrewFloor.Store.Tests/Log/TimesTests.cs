using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>When something happened, and when it was recorded.</summary>
public sealed class TimesTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);
    private readonly Guid _batch = NewId();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task What_had_to_wait_is_recorded_after_what_it_waited_for() =>
        Assert.True(await IsRecordedAfterTheWaitAsync(Locks.Usual));

    [Fact]
    public async Task By_the_moment_its_transaction_began_it_would_come_first() =>
        Assert.False(await IsRecordedAfterTheWaitAsync(new() { Clock = "SELECT now()" }));

    [Fact]
    public async Task An_entry_is_judged_on_the_floor_as_it_stood_at_its_time()
    {
        (await _floor.SendAsync(new PutOutOfService(K3, "Seal drips") { Id = NewId(), At = Ago(1) })).Stored();
        var late = Fill(K3, _batch, at: Ago(3));

        var judged = (await _floor.Log.CheckAsync(Request(Ann, late), Stop)).Judged[0].Verdict;
        Assert.DoesNotContain("out-of-service", judged.Objections.Select(o => o.Code));

        var today = (await _floor.Log.CheckAsync(Request(Ann, late with { At = default }), Stop)).Judged[0].Verdict;
        Assert.Contains("out-of-service", today.Objections.Select(o => o.Code));
    }

    [Fact]
    public async Task A_typed_minute_comes_after_what_already_stands_in_it()
    {
        DateTimeOffset minute = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        (await _floor.InsistAsync(Ann, Fill(K3, _batch, at: minute.AddSeconds(30)))).Stored();
        Emptied emptied = new(K3, _batch, Litres(1)) { Id = NewId(), At = minute };

        // Where the second is known it is believed, and then there was no beer yet.
        var known = await _floor.InsistAsync(Ann, emptied with { Id = NewId(), At = minute.AddMilliseconds(1) });
        Assert.Contains("no-such-beer", known.Codes());

        var stored = (await _floor.InsistAsync(Ann, emptied)).Stored();
        Assert.Equal(minute.AddSeconds(30).AddMicroseconds(1), stored[0].At);
    }

    [Fact]
    public async Task Instants_are_cut_to_the_microsecond_before_anything_is_made_of_them()
    {
        var at = Ago(1);
        var note = Note(K3, "once", at.AddTicks(3));
        var first = (await _floor.SendAsync(note)).Stored()[0];

        var again = note with { At = at.AddTicks(4) };
        Assert.NotEqual(note, again);
        Assert.Equal(first with { Again = true }, (await _floor.SendAsync(again)).Stored()[0]);
        Assert.Equal(at, first.At);
        Assert.IsType<Appended.Conflict>(await _floor.SendAsync(note with { At = at.AddMicroseconds(1) }));
    }

    [Fact]
    public async Task A_clock_that_is_off_shifts_the_time_by_what_it_is_off()
    {
        var behind = Note(K3, "from a phone", Ago(3).AddMinutes(-10)) with { SentAt = Ago(3) };

        var stored = (await _floor.SendAsync(behind)).Stored();

        Assert.InRange(stored[0].At, Ago(0).AddMinutes(-11), Ago(0).AddMinutes(-9));
    }

    [Fact]
    public async Task Without_the_time_of_sending_a_clock_that_is_ahead_is_refused_and_one_behind_believed()
    {
        Assert.Equal(["ahead-of-clock"], (await _floor.SendAsync(Note(K3, "ahead", Ago(-2)))).Codes());
        var behind = Note(K3, "behind", Ago(3).AddMinutes(-10));
        Assert.Equal(behind.At, (await _floor.SendAsync(behind)).Stored()[0].At);
    }

    [Fact]
    public async Task Two_minutes_are_nobodys_fault_and_a_day_tells_no_time()
    {
        var near = Note(K3, "near", Ago(1)) with { SentAt = Ago(0).AddSeconds(-90) };
        Assert.Equal(near.At, (await _floor.SendAsync(near)).Stored()[0].At);

        var far = Note(K3, "far", Ago(26)) with { SentAt = Ago(25) };
        Assert.Equal(["clock-far-off"], (await _floor.SendAsync(far)).Codes());
        (await _floor.SendAsync(far with { SentAt = Ago(23.9) })).Stored();
    }

    private async Task<bool> IsRecordedAfterTheWaitAsync(Locks locks)
    {
        FloorLog log = new(_floor.Database, _floor.Rules) { Locks = locks };
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);
        var waits = log.AppendAsync(Request(Ann, Note(K3, "waits")), Stop);
        Assert.Equal(1, await _floor.WaitingAsync(1));
        var meanwhile = await _floor.AskAsync<DateTime>("SELECT clock_timestamp()");
        await held.LetGoAsync();
        return (await waits).Stored()[0].At.UtcDateTime >= meanwhile;
    }
}
