using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Spreadsheets;

/// <summary>What a spreadsheet brought goes again as one, or what stands upon it is named.</summary>
public sealed class SpreadsheetUndoTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private SomeSheets Sheets => new(_floor);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task An_undo_strikes_every_entry_takes_the_tanks_off_the_floor_and_is_done_once()
    {
        var sheet = await Sheets.ImportedAsync(SheetKind.Tanks, SomeSheets.Tanks("S1", "S2"));

        var all = await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop))
        );

        Assert.Equal(4, all.OfType<Undone.Done>().Count());
        Assert.Single(all.OfType<Undone.Done>(), done => !done.Again);
        Assert.DoesNotContain(
            (await _floor.Reader.FloorAsync(Stop)).Floor.Tanks,
            tank => tank.Thing.Code is "S1" or "S2"
        );
        Assert.Equal(1, await _floor.AskAsync<long>("SELECT count(*) FROM entries WHERE kind = 'struck'"));
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM jobs WHERE resolved_at IS NULL"));
        Assert.Equal(Ben.Id, (await Sheets.Book.FindAsync(sheet, SomeSheets.Now, Stop))!.UndoneBy);
    }

    [Fact]
    public async Task A_tank_that_was_taken_back_comes_again_as_the_same_tank()
    {
        var sheet = await Sheets.ImportedAsync(SheetKind.Tanks, SomeSheets.Tanks("S1"));
        Assert.IsType<Undone.Done>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
        var (id, version) = (await Sheets.Import.TakenBackAsync(Stop))["S1"];
        var again = ATank(id, "S1", 300) with { Version = version + 1 };

        var second = await Sheets.ImportedAsync(SheetKind.Tanks, new([again], [SomeSheets.Found(id)]));

        var (tank, state) = (await _floor.Reader.TankAsync("S1", Stop))!.Floor.Tanks[0];
        Assert.Equal((id, 300, false), (tank.Id, tank.Total.Liters, tank.IsRetired));
        Assert.Equal(Soil.Soiled, state.Soil);
        Assert.Equal(3, (await _floor.Inventory.HistoryAsync(id, Stop)).Count);
        Assert.Empty(await Sheets.Import.TakenBackAsync(Stop));
        Assert.IsType<Undone.Done>(await Sheets.Undo.UndoAsync(second, NewId(), "once more", Ben, Stop));
    }

    [Fact]
    public async Task A_tank_that_was_retired_by_hand_does_not_come_again()
    {
        var tank = (await _floor.Reader.TankAsync("P2", Stop))!.Floor.Tanks[0].Thing;
        (await _floor.SendAsync(new Vented(P2) { Id = NewId() })).Stored();
        Assert.IsType<Edited.Done>(
            await _floor.Inventory.EditAsync(tank with { RetiredOn = new(2026, 3, 2) }, Ann, Stop)
        );

        Assert.Empty(await Sheets.Import.TakenBackAsync(Stop));
    }

    [Fact]
    public async Task What_others_wrote_upon_it_is_named_and_nothing_is_undone()
    {
        var brought = SomeSheets.Tanks("S1", "S2");
        var sheet = await Sheets.ImportedAsync(SheetKind.Tanks, brought);
        foreach (var number in Enumerable.Range(1, 6))
        {
            (await _floor.SendAsync(Note(brought.Tanks[0].Id, $"{number}"))).Stored();
        }

        var renamed = (await _floor.Reader.TankAsync("S2", Stop))!.Floor.Tanks[0].Thing with { Name = "Left" };
        Assert.IsType<Edited.Done>(await _floor.Inventory.EditAsync(renamed, Ben, Stop));
        var before = await Sheets.CountsAsync();

        var stands = Assert.IsType<Undone.Stands>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.Equal(7, stands.Count);
        Assert.Equal(["noted", "noted", "noted", "noted", "noted"], stands.First.Select(upon => upon.Kind));
        Assert.All(stands.First, upon => Assert.Equal("S1", upon.Called));
        Assert.Equal(before, await Sheets.CountsAsync());
        Assert.False((await Sheets.Book.FindAsync(sheet, SomeSheets.Now, Stop))!.IsUndone);
    }

    [Fact]
    public async Task What_was_written_upon_it_and_struck_again_does_not_stand_in_the_way()
    {
        var brought = SomeSheets.Tanks("S1");
        var sheet = await Sheets.ImportedAsync(SheetKind.Tanks, brought);
        var note = Note(brought.Tanks[0].Id, "a slip");
        (await _floor.SendAsync(note)).Stored();
        Assert.IsType<Undone.Stands>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
        (await _floor.SendAsync(new Struck([note.Id], "a slip") { Id = NewId() })).Stored();

        Assert.IsType<Undone.Done>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
    }

    [Fact]
    public async Task Beer_goes_out_of_its_tank_again_and_is_no_batch_any_more()
    {
        var sheet = await Sheets.ImportedAsync(SheetKind.Batches, SomeSheets.Beer(K3, P2));
        Assert.True((await _floor.TankAsync(K3)).HoldsBeer);

        Assert.IsType<Undone.Done>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.False((await _floor.TankAsync(K3)).HoldsBeer);
        Assert.Empty((await _floor.Reader.BatchesAsync(null, 50, Stop)).Floor.Batches);
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM tank_occupancies"));
    }

    [Fact]
    public async Task A_reading_of_the_beer_stands_upon_it()
    {
        var beer = SomeSheets.Beer(K3);
        var sheet = await Sheets.ImportedAsync(SheetKind.Batches, beer);
        var batch = ((BatchTakenOver)beer.Entries[0]).BatchId;
        (
            await _floor.SendAsync(new TemperatureTaken(K3, Temperature.FromDegreesCelsius(19)) { Id = NewId() })
        ).Stored();
        Assert.True((await _floor.BatchAsync(batch)).Filled is not null);
        (await _floor.InsistAsync(Ann, new Discarded(K3, batch, Litres(5), "foam") { Id = NewId() })).Stored();

        var stands = Assert.IsType<Undone.Stands>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.Equal("discarded", stands.First[^1].Kind);
    }

    [Fact]
    public async Task Helpers_undo_nothing_and_what_was_never_imported_cannot_be_undone()
    {
        var sheet = await Sheets.ImportedAsync(SheetKind.Tanks, SomeSheets.Tanks("S1"));
        var open = await Sheets.SheetAsync(SheetKind.Tanks);

        Assert.IsType<Undone.Refused>(await Sheets.Undo.UndoAsync(sheet, NewId(), "a slip", Cem, Stop));
        Assert.IsType<Undone.Unknown>(await Sheets.Undo.UndoAsync(open, NewId(), "a slip", Ben, Stop));
        Assert.IsType<Undone.Unknown>(await Sheets.Undo.UndoAsync(NewId(), NewId(), "a slip", Ben, Stop));
        var objections = Assert
            .IsType<Undone.Refused>(await Sheets.Undo.UndoAsync(sheet, NewId(), " ", Ben, Stop))
            .Objections;
        Assert.Equal(["no-reason"], objections.Select(o => o.Code));
        Assert.NotNull(await _floor.Reader.TankAsync("S1", Stop));
        Assert.False((await Sheets.Book.FindAsync(sheet, SomeSheets.Now, Stop))!.IsUndone);
    }
}
