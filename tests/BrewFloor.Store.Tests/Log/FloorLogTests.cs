using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

public sealed class FloorLogTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_note_without_a_time_stands_when_it_was_recorded()
    {
        var before = Ago(0);
        var stored = (await _floor.SendAsync(Note(K3, "Looked in"))).Stored();

        var line = await _floor.Lines.EntryAsync(stored[0].Id, Stop);
        Assert.Equal(line!.Recorded, stored[0].At);
        Assert.InRange(stored[0].At, before.AddMinutes(-1), Ago(0).AddMinutes(1));
        Assert.Equal(0, stored[0].At.Ticks % TimeSpan.TicksPerMicrosecond);
        Assert.Equal("Looked in", line.Entry.Note);
    }

    [Fact]
    public async Task Wort_in_a_tank_brings_its_batch_with_the_next_number()
    {
        var (first, second) = (NewId(), NewId());
        (await _floor.InsistAsync(Ann, Fill(K3, first))).Stored();
        (await _floor.InsistAsync(Ann, Fill(P2, second))).Stored();

        var view = await _floor.Reader.FloorAsync(Stop);
        Assert.Equal([1, 2], view.Floor.Batches.Select(b => b.Thing.Number).Order());
        Assert.Equal(first, view.Floor.Tank(K3).State.BatchId);
        Assert.Equal(900, view.Floor.Tank(K3).State.Contents.Volume!.Value.Liters);
    }

    [Fact]
    public async Task Wort_that_is_logged_late_brings_its_batch_too()
    {
        var batch = NewId();
        (await _floor.SendAsync(Note(K3, "Looked in", Ago(1)))).Stored();
        (await _floor.InsistAsync(Ann, Fill(K3, batch, at: Ago(3)))).Stored();

        Assert.Equal(batch, (await _floor.TankAsync(K3)).BatchId);
        Assert.Equal(["batch-exists"], (await _floor.SendAsync(Fill(P2, batch, at: Ago(2)))).Codes().Take(1));
    }

    [Fact]
    public async Task Entries_of_one_minute_stand_in_the_order_they_came()
    {
        var minute = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        (await _floor.SendAsync(Note(K3, "a", minute))).Stored();
        (await _floor.SendAsync(Note(K3, "b", minute))).Stored();
        var group = (await _floor.SendAsync(Note(K3, "c", minute), Note(K3, "d", minute))).Stored();

        var page = await _floor.Lines.TimelineAsync(Subject.Tank(K3), after: null, 10, Stop);
        Assert.Equal(["d", "c", "b", "a"], page.Items.Select(l => l.Entry.Note));
        Assert.Equal(minute.AddTicks(3 * TimeSpan.TicksPerMicrosecond), group[1].At);
    }

    [Fact]
    public async Task What_is_not_on_the_floor_is_said_and_not_thrown()
    {
        Assert.Equal(["unknown-tank"], (await _floor.SendAsync(Note(NewId(), "?"))).Codes());
        Assert.Equal(["unknown-batch"], (await _floor.SendAsync(Fill(K3, NewId()) with { NewBatch = null })).Codes());
    }

    [Fact]
    public async Task Whoever_is_said_to_have_done_it_is_somebody_of_the_house()
    {
        Store.People.Accounts accounts = new(_floor);
        var hand = (await accounts.AddAsync("Dot", Domain.People.Role.Helper, null, false, Ago(0), Stop))!;
        var note = Note(K3, "Looked in") with { DoneBy = [hand.Id] };
        (await _floor.SendAsync(note)).Stored();

        var nobody = note with { Id = NewId(), DoneBy = [hand.Id, NewId()] };
        Assert.Equal(["unknown-person"], (await _floor.SendAsync(nobody)).Codes());
        Corrected corrected = new(note.Id, nobody with { Id = note.Id }, "It was another") { Id = NewId() };
        Assert.Equal(["unknown-person"], (await _floor.SendAsync(corrected)).Codes());
    }

    [Fact]
    public async Task What_is_said_of_a_batch_that_has_no_number_yet_calls_it_by_its_name()
    {
        var batch = NewId();
        Emptied elsewhere = new(P2, batch, Litres(1)) { Id = NewId() };

        var judged = (await _floor.Log.CheckAsync(Request(Ann, Fill(K3, batch), elsewhere), Stop)).Judged;
        Assert.Equal("Harvest Ale", Called(judged[1]));

        (await _floor.InsistAsync(Ann, Fill(K3, batch))).Stored();
        judged = (await _floor.Log.CheckAsync(Request(Ann, elsewhere), Stop)).Judged;
        Assert.Equal(1, Called(judged[0]));
    }

    private static object? Called(Judged judged) =>
        judged
            .Verdict.Objections.Single(o => o.Code is "no-such-beer")
            .Numbers.Single(number => number.Name is "batch")
            .Value;

    [Fact]
    public async Task Of_many_entries_all_are_written_or_none()
    {
        var refused = await _floor.SendAsync(Note(K3, "fine"), Note(NewId(), "lost"));

        Assert.Equal(["unknown-tank"], refused.Codes());
        Assert.Equal(0L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Fact]
    public async Task May_I_stores_nothing()
    {
        var judged = await _floor.Log.CheckAsync(Request(Ann, Note(K3, "?"), Fill(K3, NewId())), Stop);

        Assert.Equal(2, judged.Judged.Count);
        Assert.Equal(0L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
        Assert.Equal(0L, await _floor.AskAsync<long>("SELECT count(*) FROM batches"));
    }

    [Fact]
    public async Task A_time_that_has_not_come_is_refused_with_both_times()
    {
        var refused = await _floor.SendAsync(Note(K3, "tomorrow", Ago(-24)));

        Assert.Equal(["ahead-of-clock"], refused.Codes());
    }

    [Fact]
    public async Task A_phone_whose_clock_is_three_hours_ahead_is_set_right()
    {
        var note = Note(K3, "from the phone", Ago(-3).AddMinutes(-10)) with { SentAt = Ago(-3) };

        var stored = (await _floor.SendAsync(note)).Stored();

        Assert.InRange(stored[0].At, Ago(0).AddMinutes(-11), Ago(0).AddMinutes(-9));
        Assert.InRange((await _floor.Lines.EntryAsync(note.Id, Stop))!.Skew!.Value.TotalHours, 2.99, 3.01);
    }
}
