using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Corrections and strikes, across tanks, batches and cultures.</summary>
public sealed class MendingTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);
    private readonly Guid _batch = NewId();
    private readonly Guid _yeast = NewId();
    private Filled _filled = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        _filled = Fill(K3, _batch, at: Ago(10));
        (await _floor.InsistAsync(Ann, _filled)).Stored();
    }

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task A_corrected_volume_is_what_the_tank_and_the_batch_hold_under_the_first_id()
    {
        var stored = (await _floor.InsistAsync(Ann, Correct(_filled, _filled with { Volume = Litres(800) }))).Stored();

        var tank = await _floor.TankAsync(K3);
        Assert.Equal(800, tank.Contents.Volume!.Value.Liters);
        Assert.Equal(_filled.Id, tank.Contents.Since.Entry);
        Assert.Equal(800, (await _floor.BatchAsync(_batch)).Litres.FilledIn.Liters);
        Assert.Equal(stored[0].Id, (await _floor.Lines.EntryAsync(_filled.Id, Stop))!.MendedBy);
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM batches"));
    }

    [Fact]
    public async Task A_fill_corrected_to_another_tank_leaves_the_first_empty()
    {
        (await _floor.InsistAsync(Ann, Correct(_filled, _filled with { TankId = P2 }))).Stored();

        Assert.False((await _floor.TankAsync(K3)).HoldsBeer);
        Assert.Equal(_batch, (await _floor.TankAsync(P2)).BatchId);
        Assert.Equal([P2], (await _floor.BatchAsync(_batch)).InTanks.Select(t => t.TankId));
        Assert.Equal(P2, await _floor.AskAsync<Guid>("SELECT tank_id FROM tank_occupancies WHERE upper_inf(during)"));
    }

    [Fact]
    public async Task A_racking_corrected_to_less_is_less_in_both_tanks()
    {
        var racked = await RackAsync(850);
        (await _floor.InsistAsync(Ann, Correct(racked, racked with { Volume = Litres(700), IsRest = false }))).Stored();

        Assert.Equal(_batch, (await _floor.TankAsync(K3)).BatchId);
        Assert.Equal(700, (await _floor.TankAsync(P2)).Contents.Volume!.Value.Liters);
        Assert.Equal(2, (await _floor.BatchAsync(_batch)).InTanks.Count);
    }

    [Fact]
    public async Task A_corrected_culture_hands_its_generation_on_to_the_batch_it_was_pitched_into()
    {
        var received = await PitchAsync(generation: 2);
        (await _floor.InsistAsync(Ann, Correct(received, received with { GenerationAtLeast = 5 }))).Stored();

        Assert.Equal([5], (await _floor.BatchAsync(_batch)).Pitches.Select(p => p.Generation));
        Assert.Equal(
            2L,
            await _floor.AskAsync<long>("SELECT count(*) FROM handed_over WHERE kind = 'yeast-given' AND until IS NULL")
        );
    }

    [Fact]
    public async Task Only_a_changed_handover_walks_on_to_the_next_tank()
    {
        await RackAsync(850);
        Racked onwards = new(P2, B1, _batch, Litres(800), Litres(50)) { Id = NewId(), At = Ago(3) };
        (await _floor.InsistAsync(Ann, onwards)).Stored();
        await using var held = await Holder.OfTankAsync(_floor.Database, B1);
        FloorLog hasty = new(_floor.Database, _floor.Rules) { Locks = new() { Patience = TimeSpan.FromSeconds(0.1) } };

        // Both are K3's alone; what it hands to P2, and that to B1, is whether it met something.
        TemperatureTaken warm = new(K3, Temperature.FromDegreesCelsius(18)) { Id = NewId(), At = Ago(7) };
        (await hasty.AppendAsync(Request(Ann, warm), Stop)).Stored();
        Exposed exposed = new(K3, ExposureKind.Allergen, "wheat") { Id = NewId(), At = Ago(7) };
        var failed = await Assert.ThrowsAsync<PostgresException>(() => hasty.AppendAsync(Request(Ann, exposed), Stop));

        Assert.Equal(PostgresErrorCodes.LockNotAvailable, failed.SqlState);
        await held.LetGoAsync();
        (await _floor.InsistAsync(Ann, exposed)).Stored();
        Assert.Contains("wheat", (await _floor.TankAsync(B1)).ExposedTo.Select(e => e.What));
    }

    [Fact]
    public async Task A_struck_correction_restores_what_it_replaced()
    {
        var correction = Correct(_filled, _filled with { Volume = Litres(800) });
        (await _floor.InsistAsync(Ann, correction)).Stored();
        var second = Correct(_filled, _filled with { Volume = Litres(700) });
        (await _floor.InsistAsync(Ann, second)).Stored();

        (await _floor.SendAsync(Strike(second))).Stored();
        Assert.Equal(800, (await _floor.TankAsync(K3)).Contents.Volume!.Value.Liters);

        (await _floor.SendAsync(Strike(correction))).Stored();
        Assert.Equal(900, (await _floor.TankAsync(K3)).Contents.Volume!.Value.Liters);
    }

    [Fact]
    public async Task A_correction_stands_in_one_request_with_what_brings_new_batches_and_cultures()
    {
        var (next, pack) = (NewId(), NewId());
        var correction = Correct(_filled, _filled with { Volume = Litres(800) });

        (await _floor.InsistAsync(Ann, Fill(P2, next, at: Ago(2)), correction, Received(pack))).Stored();

        Assert.Equal(800, (await _floor.TankAsync(K3)).Contents.Volume!.Value.Liters);
        Assert.Equal(next, (await _floor.TankAsync(P2)).BatchId);
        Assert.Equal(2L, await _floor.AskAsync<long>("SELECT count(*) FROM batches"));
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM cultures"));
    }

    [Fact]
    public async Task A_strike_frees_the_tank_for_the_new_batch_of_the_same_request()
    {
        var next = NewId();
        var anew = Fill(K3, next, at: Ago(1));
        Assert.Contains("tank-occupied", (await _floor.InsistAsync(Ann, anew)).Codes());

        (await _floor.InsistAsync(Ann, Strike(_filled), anew, Received(NewId()))).Stored();

        Assert.Equal(next, (await _floor.TankAsync(K3)).BatchId);
        Assert.Equal(next, await _floor.AskAsync<Guid>("SELECT batch_id FROM tank_occupancies"));
    }

    [Fact]
    public async Task A_batch_or_a_culture_comes_into_being_once_also_beside_a_correction()
    {
        var correction = Correct(_filled, _filled with { Volume = Litres(800) });

        var refused = await _floor.InsistAsync(Ann, correction, Fill(P2, _batch, at: Ago(2)));

        Assert.Contains("batch-exists", refused.Codes());
    }

    [Fact]
    public async Task Only_the_latest_correction_may_be_struck()
    {
        var first = Correct(_filled, _filled with { Volume = Litres(800) });
        (await _floor.InsistAsync(Ann, first)).Stored();
        (await _floor.InsistAsync(Ann, Correct(_filled, _filled with { Volume = Litres(700) }))).Stored();

        Assert.Equal(["not-the-latest"], (await _floor.SendAsync(Strike(first))).Codes());
    }

    [Fact]
    public async Task A_struck_entry_cannot_be_corrected_or_struck_again()
    {
        var note = Note(B1, "wrong tank");
        await _floor.SendAsync(note);
        (await _floor.SendAsync(Strike(note))).Stored();

        Assert.Equal(["entry-struck"], (await _floor.SendAsync(Correct(note, note with { Note = "right" }))).Codes());
        Assert.Equal(["entry-struck"], (await _floor.SendAsync(Strike(note))).Codes());
        Assert.Equal(Mark.Struck, (await _floor.Lines.EntryAsync(note.Id, Stop))!.Mark);
    }

    [Fact]
    public async Task A_strike_that_makes_later_entries_impossible_names_them_and_may_strike_all_together()
    {
        var racked = await RackAsync(850);
        var refused = Assert.IsType<Appended.Refused>(await _floor.SendAsync(Strike(_filled)));
        var objection = Assert.Single(refused.Entries[0].Verdict.Objections);
        Assert.Equal("later-impossible", objection.Code);
        var named = Assert.IsType<string>(objection.Numbers.First(n => n.Name is "entries").Value);
        Assert.Equal(racked.Id, Guid.Parse(named));

        (await _floor.SendAsync(Strike(_filled, racked))).Stored();

        Assert.False((await _floor.TankAsync(K3)).HoldsBeer);
        Assert.False((await _floor.TankAsync(P2)).HoldsBeer);
        Assert.Equal(0L, await _floor.AskAsync<long>("SELECT count(*) FROM tank_occupancies"));
        Assert.Empty((await _floor.Reader.BatchesAsync(before: null, 10, Stop)).Floor.Batches);
    }

    [Fact]
    public async Task What_is_not_in_the_log_cannot_be_mended()
    {
        Assert.Equal(["no-such-entry"], (await _floor.SendAsync(Strike(Note(K3, "never sent")))).Codes());
        var note = Note(K3, "never sent");
        Assert.Equal(["no-such-entry"], (await _floor.SendAsync(Correct(note, note))).Codes());
    }

    [Fact]
    public async Task A_helper_mends_own_entries_only()
    {
        var (own, others) = (Note(K3, "own"), Note(K3, "other"));
        await _floor.SendAsync(Cem, own);
        await _floor.SendAsync(Ben, others);

        (await _floor.SendAsync(Cem, Strike(own))).Stored();
        Assert.Equal(["not-your-entry"], (await _floor.SendAsync(Cem, Strike(others))).Codes());
    }

    [Fact]
    public async Task Two_who_correct_one_entry_at_once_are_one_after_the_other()
    {
        var all = await Task.WhenAll(
            Enumerable
                .Range(1, 8)
                .Select(i => _floor.InsistAsync(Ann, Correct(_filled, _filled with { Volume = Litres(700 + i) })))
        );

        Assert.All(all, a => a.Stored());
        Assert.Equal(
            1L,
            await _floor.AskAsync<long>(
                "SELECT count(*) FROM entry_subjects WHERE entry_id = $1 AND subject_id = $2 AND until IS NULL",
                _filled.Id,
                K3
            )
        );
    }

    private static Corrected Correct(LogEntry old, LogEntry anew) => new(old.Id, anew, "misread") { Id = NewId() };

    private static Struck Strike(params LogEntry[] entries) =>
        new([.. entries.Select(e => e.Id)], "never was") { Id = NewId() };

    private async Task<Racked> RackAsync(double litres)
    {
        Racked racked = new(K3, P2, _batch, Litres(litres), Litres(900 - litres)) { Id = NewId(), At = Ago(5) };
        (await _floor.InsistAsync(Ann, racked)).Stored();
        return racked;
    }

    private async Task<CultureTakenOver> PitchAsync(int generation)
    {
        CultureTakenOver found = new(
            new(_yeast, "House ale", CultureKind.Slurry),
            YeastAmount.Of(Volume.FromMilliliters(3000)),
            generation
        )
        {
            Id = NewId(),
            At = Ago(9),
        };
        Pitched pitched = new(K3, _batch, [new(_yeast, YeastAmount.Of(Volume.FromMilliliters(2000)))])
        {
            Id = NewId(),
            At = Ago(8),
        };
        (await _floor.InsistAsync(Ann, found)).Stored();
        (await _floor.InsistAsync(Ann, pitched)).Stored();
        return found;
    }
}
