using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

public sealed class SameIdTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task The_same_entry_twice_is_one_and_gets_the_first_answer()
    {
        var note = Note(K3, "once");
        var first = (await _floor.SendAsync(note)).Stored()[0];
        var second = (await _floor.SendAsync(note)).Stored()[0];

        Assert.Equal(first with { Again = true }, second);
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Fact]
    public async Task Something_else_under_the_same_id_is_a_conflict()
    {
        var note = Note(K3, "once");
        await _floor.SendAsync(note);

        Assert.Equal(new Appended.Conflict(note.Id), await _floor.SendAsync(note with { Note = "twice" }));
        Assert.Equal(new Appended.Conflict(note.Id), await _floor.SendAsync(Ben, note));
    }

    [Fact]
    public async Task Asked_beforehand_a_conflict_is_said_too()
    {
        var note = Note(K3, "once");
        Assert.Null((await _floor.Log.CheckAsync(Request(Ann, note), Stop)).Conflict);
        await _floor.SendAsync(note);

        Assert.Null((await _floor.Log.CheckAsync(Request(Ann, note), Stop)).Conflict); // the same again
        var heard = await _floor.Log.CheckAsync(Request(Ann, note with { Note = "twice" }, Note(P2, "fine")), Stop);

        Assert.Equal(note.Id, heard.Conflict);
    }

    [Fact]
    public async Task Without_the_kept_hash_something_else_would_pass_for_the_same()
    {
        var note = Note(K3, "once");
        await _floor.SendAsync(note);
        var other = note with { Note = "twice" };
        var hash = Convert.ToHexString(EntryJson.Hash(other, Ann));
        await _floor.AsOwnerAsync("DROP TRIGGER tr_entries_stay_as_written ON entries");
        await _floor.AsOwnerAsync($"UPDATE entries SET hash = decode('{hash}', 'hex')");

        Assert.True((await _floor.SendAsync(other)).Stored()[0].Again);
        Assert.IsType<Appended.Conflict>(await _floor.SendAsync(note));
    }

    [Fact]
    public async Task The_reason_and_the_objections_shown_are_not_part_of_what_was_sent()
    {
        var note = Note(K3, "once");
        await _floor.SendAsync(note);
        Sent answered = new(note, new("as told", ["any"], AlreadyHappened: true)) { CautionsShown = ["co2"] };

        Assert.True((await _floor.Log.AppendAsync(new([answered], Ann), Stop)).Stored()[0].Again);
    }

    [Fact]
    public async Task A_time_left_out_stays_left_out_and_is_not_the_one_that_was_filled_in()
    {
        var note = Note(K3, "once");
        var stored = (await _floor.SendAsync(note)).Stored()[0];

        Assert.True((await _floor.SendAsync(note)).Stored()[0].Again);
        Assert.IsType<Appended.Conflict>(await _floor.SendAsync(note with { At = stored.At }));
    }

    [Fact]
    public async Task What_was_refused_may_come_again_under_its_id_with_a_reason()
    {
        var fill = Fill(K3, NewId());
        Assert.IsType<Appended.Refused>(await _floor.SendAsync(fill));

        Assert.False((await _floor.InsistAsync(Ann, fill)).Stored()[0].Again);
    }

    [Fact]
    public async Task A_thousand_entries_sent_again_after_the_reply_was_lost_are_a_thousand()
    {
        var notes = Enumerable.Range(0, 1000).Select(i => Note(i % 2 == 0 ? K3 : P2, $"note {i}")).ToArray();
        foreach (var some in notes.Chunk(50))
        {
            (await _floor.SendAsync(some)).Stored(); // the reply is lost
            var again = (await _floor.SendAsync([.. some, Note(B1, "and one more")])).Stored();
            Assert.Equal([.. Enumerable.Repeat(true, 50), false], again.Select(e => e.Again));
        }

        Assert.Equal(1000L + 20, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }
}
