using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Tests.Log;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Spreadsheets;

/// <summary>A spreadsheet's rows come in all or none, once, and go again as one.</summary>
public sealed class SpreadsheetImportTests(TestServer server) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = TimeProvider.System.GetUtcNow();

    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private SpreadsheetBook Book => new(_floor.Database);

    private SpreadsheetImport Import => new(_floor.Database, _floor.Log);

    private SpreadsheetUndo Undo => new(_floor.Database, _floor.Log);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Tanks_and_how_they_were_found_come_in_together()
    {
        var sheet = await SheetAsync(SheetKind.Tanks);
        var brought = Tanks("S1", "S2");

        Assert.Equal(new Imported.Done(Again: false), await Import.ImportAsync(sheet, brought, Ben, Stop));

        var tank = (await _floor.Reader.TankAsync("S2", Stop))!.Floor.Tanks[0];
        Assert.Equal((Soil.Soiled, Closure.Vented), (tank.State.Soil, tank.State.Closure));
        Assert.Equal([Ben.Id], (await _floor.Inventory.HistoryAsync(tank.Thing.Id, Stop)).Select(change => change.By));
        var kept = (await Book.FindAsync(sheet, Now, Stop))!;
        Assert.Equal((true, 2, 2, Ben.Id), (kept.IsImported, kept.Entries.Count, kept.Tanks.Count, kept.ImportedBy));
    }

    [Fact]
    public async Task A_look_writes_nothing_and_hears_what_the_import_will_hear()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId()))).Stored();
        var tanks = Tanks("S1");
        var beer = Beer(K3);
        var before = await CountsAsync();

        Assert.Equal(new Imported.Done(Again: false), await Import.CheckAsync(tanks, Ben, Stop));
        var refused = Assert.IsType<Imported.Refused>(await Import.CheckAsync(beer, Ben, Stop));

        Assert.Equal(["tank-occupied"], refused.Entries.SelectMany(e => e.Verdict.Objections).Select(o => o.Code));
        Assert.Equal(before, await CountsAsync());
        var sheet = await SheetAsync(SheetKind.Batches);
        var heard = Assert.IsType<Imported.Refused>(await Import.ImportAsync(sheet, beer, Ben, Stop));
        Assert.Equal(
            refused.Entries.SelectMany(e => e.Verdict.Objections),
            heard.Entries.SelectMany(e => e.Verdict.Objections)
        );
        Assert.False((await Book.FindAsync(sheet, Now, Stop))!.IsImported);
    }

    [Fact]
    public async Task One_row_that_cannot_be_keeps_all_of_them_out()
    {
        var sheet = await SheetAsync(SheetKind.Tanks);
        var good = Tanks("S1");
        var beerInIt = new TankTakenOver(good.Tanks[0].Id) { Id = NewId(), Contents = Holding.Beer };
        var before = await CountsAsync();

        Assert.IsType<Imported.Refused>(
            await Import.ImportAsync(sheet, good with { Entries = [.. good.Entries, beerInIt] }, Ben, Stop)
        );
        Assert.IsType<Imported.Overtaken>(await Import.ImportAsync(sheet, Tanks("S1", "k3"), Ben, Stop));

        Assert.Equal(before, await CountsAsync());
        Assert.Null(await _floor.Reader.TankAsync("S1", Stop));
        Assert.Equal(new Imported.Done(Again: false), await Import.ImportAsync(sheet, good, Ben, Stop));
    }

    [Fact]
    public async Task Of_eight_who_send_one_spreadsheet_at_once_one_brings_it()
    {
        var sheet = await SheetAsync(SheetKind.Cultures);
        var brought = Jars(5);

        var all = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => Import.ImportAsync(sheet, brought, Ben, Stop))
        );

        Assert.Equal(8, all.OfType<Imported.Done>().Count());
        Assert.Single(all.OfType<Imported.Done>(), done => !done.Again);
        Assert.Equal(5, await _floor.AskAsync<long>("SELECT count(*) FROM cultures"));
        Assert.Equal(5, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Fact]
    public async Task Of_two_spreadsheets_with_one_code_the_second_hears_that_the_floor_moved()
    {
        var sheets = new[] { await SheetAsync(SheetKind.Tanks), await SheetAsync(SheetKind.Tanks) };

        var all = await Task.WhenAll(sheets.Select(sheet => Import.ImportAsync(sheet, Tanks("S1", "S2"), Ben, Stop)));

        Assert.Single(all.OfType<Imported.Done>());
        Assert.Single(all.OfType<Imported.Overtaken>());
        Assert.Equal(2, await _floor.AskAsync<long>("SELECT count(*) FROM tanks WHERE code LIKE 'S%'"));
    }

    [Fact]
    public async Task A_helper_and_a_brewers_rating_are_refused()
    {
        var sheet = await SheetAsync(SheetKind.Tanks);
        var rated = ATank(NewId(), "S1", 100) with
        {
            Rating = new(Pressure.FromKilopascals(100), RatingSource.Plate),
        };

        Assert.Equal(["may-not-edit"], Codes(await Import.ImportAsync(sheet, Tanks("S1"), Cem, Stop)));
        Assert.Equal(["rating-is-the-owners"], Codes(await Import.ImportAsync(sheet, new([rated], []), Ben, Stop)));
        Assert.IsType<Imported.Done>(await Import.ImportAsync(sheet, new([rated], []), Ann, Stop));
    }

    [Fact]
    public async Task An_undo_strikes_every_entry_takes_the_tanks_off_the_floor_and_is_done_once()
    {
        var sheet = await ImportedAsync(SheetKind.Tanks, Tanks("S1", "S2"));

        var all = await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop))
        );

        Assert.Equal(4, all.OfType<Undone.Done>().Count());
        Assert.Single(all.OfType<Undone.Done>(), done => !done.Again);
        Assert.DoesNotContain((await _floor.Reader.FloorAsync(Stop)).Floor.Tanks, tank => tank.Thing.Code is "S1" or "S2");
        Assert.Equal(1, await _floor.AskAsync<long>("SELECT count(*) FROM entries WHERE kind = 'struck'"));
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM jobs WHERE resolved_at IS NULL"));
        Assert.Equal(Ben.Id, (await Book.FindAsync(sheet, Now, Stop))!.UndoneBy);
    }

    [Fact]
    public async Task A_tank_that_was_taken_back_comes_again_as_the_same_tank()
    {
        var sheet = await ImportedAsync(SheetKind.Tanks, Tanks("S1"));
        Assert.IsType<Undone.Done>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
        var (id, version) = (await Import.TakenBackAsync(Stop))["S1"];
        var again = ATank(id, "S1", 300) with { Version = version + 1 };

        var second = await ImportedAsync(SheetKind.Tanks, new([again], [Found(id)]));

        var (tank, state) = (await _floor.Reader.TankAsync("S1", Stop))!.Floor.Tanks[0];
        Assert.Equal((id, 300, false), (tank.Id, tank.Total.Liters, tank.IsRetired));
        Assert.Equal(Soil.Soiled, state.Soil);
        Assert.Equal(3, (await _floor.Inventory.HistoryAsync(id, Stop)).Count);
        Assert.Empty(await Import.TakenBackAsync(Stop));
        Assert.IsType<Undone.Done>(await Undo.UndoAsync(second, NewId(), "once more", Ben, Stop));
    }

    [Fact]
    public async Task A_tank_that_was_retired_by_hand_does_not_come_again()
    {
        var tank = (await _floor.Reader.TankAsync("P2", Stop))!.Floor.Tanks[0].Thing;
        (await _floor.SendAsync(new Vented(P2) { Id = NewId() })).Stored();
        Assert.IsType<Edited.Done>(
            await _floor.Inventory.EditAsync(tank with { RetiredOn = new(2026, 3, 2) }, Ann, Stop)
        );

        Assert.Empty(await Import.TakenBackAsync(Stop));
        var again = ATank(P2, "P2", 300) with { Version = 3 };
        Assert.IsType<Imported.Done>(
            await Import.CheckAsync(new([again], []), Ben, Stop) // nothing in the log speaks against it,
        );
    }

    [Fact]
    public async Task What_others_wrote_upon_it_is_named_and_nothing_is_undone()
    {
        var brought = Tanks("S1", "S2");
        var sheet = await ImportedAsync(SheetKind.Tanks, brought);
        foreach (var number in Enumerable.Range(1, 6))
        {
            (await _floor.SendAsync(Note(brought.Tanks[0].Id, $"{number}"))).Stored();
        }

        var renamed = (await _floor.Reader.TankAsync("S2", Stop))!.Floor.Tanks[0].Thing with { Name = "Left" };
        Assert.IsType<Edited.Done>(await _floor.Inventory.EditAsync(renamed, Ben, Stop));
        var before = await CountsAsync();

        var stands = Assert.IsType<Undone.Stands>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.Equal(7, stands.Count);
        Assert.Equal(["noted", "noted", "noted", "noted", "noted"], stands.First.Select(upon => upon.Kind));
        Assert.All(stands.First, upon => Assert.Equal("S1", upon.Called));
        Assert.Equal(before, await CountsAsync());
        Assert.False((await Book.FindAsync(sheet, Now, Stop))!.IsUndone);
    }

    [Fact]
    public async Task What_was_written_upon_it_and_struck_again_does_not_stand_in_the_way()
    {
        var brought = Tanks("S1");
        var sheet = await ImportedAsync(SheetKind.Tanks, brought);
        var note = Note(brought.Tanks[0].Id, "a slip");
        (await _floor.SendAsync(note)).Stored();
        Assert.IsType<Undone.Stands>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
        (await _floor.SendAsync(new Struck([note.Id], "a slip") { Id = NewId() })).Stored();

        Assert.IsType<Undone.Done>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));
    }

    [Fact]
    public async Task Beer_goes_out_of_its_tank_again_and_is_no_batch_any_more()
    {
        var sheet = await ImportedAsync(SheetKind.Batches, Beer(K3, P2));
        Assert.True((await _floor.TankAsync(K3)).HoldsBeer);

        Assert.IsType<Undone.Done>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.False((await _floor.TankAsync(K3)).HoldsBeer);
        Assert.Empty((await _floor.Reader.BatchesAsync(null, 50, Stop)).Floor.Batches);
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM tank_occupancies"));
    }

    [Fact]
    public async Task A_reading_of_the_beer_stands_upon_it()
    {
        var beer = Beer(K3);
        var sheet = await ImportedAsync(SheetKind.Batches, beer);
        var batch = ((BatchTakenOver)beer.Entries[0]).BatchId;
        (await _floor.SendAsync(new TemperatureTaken(K3, Temperature.FromDegreesCelsius(19)) { Id = NewId() })).Stored();
        Assert.True((await _floor.BatchAsync(batch)).Filled is not null);
        (await _floor.InsistAsync(Ann, new Discarded(K3, batch, Litres(5), "foam") { Id = NewId() })).Stored();

        var stands = Assert.IsType<Undone.Stands>(await Undo.UndoAsync(sheet, NewId(), "a slip", Ben, Stop));

        Assert.Equal("discarded", stands.First[^1].Kind);
    }

    [Fact]
    public async Task Helpers_undo_nothing_and_what_was_never_imported_cannot_be_undone()
    {
        var sheet = await ImportedAsync(SheetKind.Tanks, Tanks("S1"));
        var open = await SheetAsync(SheetKind.Tanks);

        Assert.IsType<Undone.Refused>(await Undo.UndoAsync(sheet, NewId(), "a slip", Cem, Stop));
        Assert.IsType<Undone.Unknown>(await Undo.UndoAsync(open, NewId(), "a slip", Ben, Stop));
        Assert.IsType<Undone.Unknown>(await Undo.UndoAsync(NewId(), NewId(), "a slip", Ben, Stop));
        var objections = Assert.IsType<Undone.Refused>(await Undo.UndoAsync(sheet, NewId(), " ", Ben, Stop)).Objections;
        Assert.Equal(["no-reason"], objections.Select(o => o.Code));
        Assert.NotNull(await _floor.Reader.TankAsync("S1", Stop));
        Assert.False((await Book.FindAsync(sheet, Now, Stop))!.IsUndone);
    }

    [Fact]
    public async Task Cells_are_kept_a_week_and_what_became_of_them_for_good()
    {
        var old = await SheetAsync(SheetKind.Tanks);
        var imported = await ImportedAsync(SheetKind.Tanks, Tanks("S1"));
        var later = Now + SpreadsheetBook.Kept + TimeSpan.FromHours(1);

        Assert.NotNull(await Book.FindAsync(old, Now, Stop));
        Assert.Null(await Book.FindAsync(old, later, Stop));
        Assert.Equal([imported], (await Book.PastAsync(Ben.Id, later, Stop)).Select(sheet => sheet.Id));
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM spreadsheets WHERE cells IS NOT NULL"));
    }

    [Fact]
    public async Task Of_one_person_ten_wait_to_be_imported_and_the_oldest_goes()
    {
        var first = await SheetAsync(SheetKind.Tanks, at: -20);
        foreach (var minute in Enumerable.Range(0, SpreadsheetBook.MostOpen))
        {
            await SheetAsync(SheetKind.Tanks, at: minute - 10);
        }

        Assert.Null(await Book.FindAsync(first, Now, Stop));
        Assert.Equal(SpreadsheetBook.MostOpen, (await Book.PastAsync(Ben.Id, Now, Stop)).Count);
    }

    private async Task<Guid> ImportedAsync(SheetKind kind, Brought brought)
    {
        var sheet = await SheetAsync(kind);
        Assert.Equal(new Imported.Done(Again: false), await Import.ImportAsync(sheet, brought, Ben, Stop));
        return sheet;
    }

    private async Task<Guid> SheetAsync(SheetKind kind, int at = 0)
    {
        var sheet = new Spreadsheet(NewId(), kind, "ours.csv", Ben.Id, Now.AddMinutes(at)) { Cells = "{}" };
        await Book.KeepAsync(sheet, Stop);
        return sheet.Id;
    }

    private static Brought Tanks(params string[] codes)
    {
        Tank[] tanks = [.. codes.Select(code => ATank(NewId(), code.ToUpperInvariant(), 100))];
        return new([.. tanks], [.. tanks.Select(tank => Found(tank.Id))]);
    }

    private static TankTakenOver Found(Guid tank) =>
        new(tank)
        {
            Id = NewId(),
            Soil = Soil.Soiled,
            Closure = Closure.Vented,
        };

    private static Brought Beer(params Guid[] tanks) =>
        new(
            [],
            [
                .. tanks.Select(tank => new BatchTakenOver(tank, new(NewId(), "Dunkel", "", BeerKind.Lager))
                {
                    Id = NewId(),
                    Volume = Litres(500),
                }),
            ]
        );

    private static Brought Jars(int count) =>
        new(
            [],
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(_ => new CultureTakenOver(
                        new(NewId(), "House ale", CultureKind.Slurry),
                        YeastAmount.Of(Volume.FromMilliliters(800)),
                        3
                    )
                    {
                        Id = NewId(),
                    }),
            ]
        );

    private async Task<(long, long, long)> CountsAsync() =>
        (
            await _floor.AskAsync<long>("SELECT count(*) FROM entries"),
            await _floor.AskAsync<long>("SELECT count(*) FROM tanks"),
            await _floor.AskAsync<long>("SELECT count(*) FROM thing_changes")
        );

    private static IEnumerable<string> Codes(Imported imported) =>
        Assert.IsType<Imported.NotAdded>(imported).Objections.Select(o => o.Code);
}
