using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Spreadsheets;

/// <summary>A spreadsheet's rows come in all or none, and once.</summary>
public sealed class SpreadsheetImportTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private SomeSheets Sheets => new(_floor);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Tanks_and_how_they_were_found_come_in_together()
    {
        var sheet = await Sheets.SheetAsync(SheetKind.Tanks);
        var brought = SomeSheets.Tanks("S1", "S2");

        Assert.Equal(new Imported.Done(Again: false), await Sheets.Import.ImportAsync(sheet, brought, Ben, Stop));

        var tank = (await _floor.Reader.TankAsync("S2", Stop))!.Floor.Tanks[0];
        Assert.Equal((Soil.Soiled, Closure.Vented), (tank.State.Soil, tank.State.Closure));
        Assert.Equal([Ben.Id], (await _floor.Inventory.HistoryAsync(tank.Thing.Id, Stop)).Select(change => change.By));
        var kept = (await Sheets.Book.FindAsync(sheet, SomeSheets.Now, Stop))!;
        Assert.Equal((true, 2, 2, Ben.Id), (kept.IsImported, kept.Entries.Count, kept.Tanks.Count, kept.ImportedBy));
    }

    [Fact]
    public async Task A_look_writes_nothing_and_hears_what_the_import_will_hear()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId()))).Stored();
        var tanks = SomeSheets.Tanks("S1");
        var beer = SomeSheets.Beer(K3);
        var before = await Sheets.CountsAsync();

        Assert.Equal(new Imported.Done(Again: false), await Sheets.Import.CheckAsync(tanks, Ben, Stop));
        var refused = Assert.IsType<Imported.Refused>(await Sheets.Import.CheckAsync(beer, Ben, Stop));

        Assert.Equal(["tank-occupied"], refused.Entries.SelectMany(e => e.Verdict.Objections).Select(o => o.Code));
        Assert.Equal(before, await Sheets.CountsAsync());
        var sheet = await Sheets.SheetAsync(SheetKind.Batches);
        var heard = Assert.IsType<Imported.Refused>(await Sheets.Import.ImportAsync(sheet, beer, Ben, Stop));
        Assert.Equal(
            refused.Entries.SelectMany(e => e.Verdict.Objections),
            heard.Entries.SelectMany(e => e.Verdict.Objections)
        );
        Assert.False((await Sheets.Book.FindAsync(sheet, SomeSheets.Now, Stop))!.IsImported);
    }

    [Fact]
    public async Task One_row_that_cannot_be_keeps_all_of_them_out()
    {
        var sheet = await Sheets.SheetAsync(SheetKind.Tanks);
        var good = SomeSheets.Tanks("S1");
        var beerInIt = new TankTakenOver(good.Tanks[0].Id) { Id = NewId(), Contents = Holding.Beer };
        var before = await Sheets.CountsAsync();

        Assert.IsType<Imported.Refused>(
            await Sheets.Import.ImportAsync(sheet, good with { Entries = [.. good.Entries, beerInIt] }, Ben, Stop)
        );
        Assert.IsType<Imported.Overtaken>(
            await Sheets.Import.ImportAsync(sheet, SomeSheets.Tanks("S1", "k3"), Ben, Stop)
        );

        Assert.Equal(before, await Sheets.CountsAsync());
        Assert.Null(await _floor.Reader.TankAsync("S1", Stop));
        Assert.Equal(new Imported.Done(Again: false), await Sheets.Import.ImportAsync(sheet, good, Ben, Stop));
    }

    [Fact]
    public async Task Of_eight_who_send_one_spreadsheet_at_once_one_brings_it()
    {
        var sheet = await Sheets.SheetAsync(SheetKind.Cultures);
        var brought = SomeSheets.Jars(5);

        var all = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => Sheets.Import.ImportAsync(sheet, brought, Ben, Stop))
        );

        Assert.Equal(8, all.OfType<Imported.Done>().Count());
        Assert.Single(all.OfType<Imported.Done>(), done => !done.Again);
        Assert.Equal(5, await _floor.AskAsync<long>("SELECT count(*) FROM cultures"));
        Assert.Equal(5, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Fact]
    public async Task Of_two_spreadsheets_with_one_code_the_second_hears_that_the_floor_moved()
    {
        var sheets = new[] { await Sheets.SheetAsync(SheetKind.Tanks), await Sheets.SheetAsync(SheetKind.Tanks) };

        var all = await Task.WhenAll(
            sheets.Select(sheet => Sheets.Import.ImportAsync(sheet, SomeSheets.Tanks("S1", "S2"), Ben, Stop))
        );

        Assert.Single(all.OfType<Imported.Done>());
        Assert.Single(all.OfType<Imported.Overtaken>());
        Assert.Equal(2, await _floor.AskAsync<long>("SELECT count(*) FROM tanks WHERE code LIKE 'S%'"));
    }

    [Fact]
    public async Task A_helper_and_a_brewers_rating_are_refused()
    {
        var sheet = await Sheets.SheetAsync(SheetKind.Tanks);
        var rated = ATank(NewId(), "S1", 100) with { Rating = new(Pressure.FromKilopascals(100), RatingSource.Plate) };

        Assert.Equal(
            ["may-not-edit"],
            Codes(await Sheets.Import.ImportAsync(sheet, SomeSheets.Tanks("S1"), Cem, Stop))
        );
        Assert.Equal(
            ["rating-is-the-owners"],
            Codes(await Sheets.Import.ImportAsync(sheet, new([rated], []), Ben, Stop))
        );
        Assert.IsType<Imported.Done>(await Sheets.Import.ImportAsync(sheet, new([rated], []), Ann, Stop));
    }

    [Fact]
    public async Task Cells_are_kept_a_week_and_what_became_of_them_for_good()
    {
        var old = await Sheets.SheetAsync(SheetKind.Tanks);
        var imported = await Sheets.ImportedAsync(SheetKind.Tanks, SomeSheets.Tanks("S1"));
        var later = SomeSheets.Now + SpreadsheetBook.Kept + TimeSpan.FromHours(1);

        Assert.NotNull(await Sheets.Book.FindAsync(old, SomeSheets.Now, Stop));
        Assert.Null(await Sheets.Book.FindAsync(old, later, Stop));
        Assert.Equal([imported], (await Sheets.Book.PastAsync(Ben.Id, later, Stop)).Select(sheet => sheet.Id));
        Assert.Equal(0, await _floor.AskAsync<long>("SELECT count(*) FROM spreadsheets WHERE cells IS NOT NULL"));
    }

    [Fact]
    public async Task Of_one_person_ten_wait_to_be_imported_and_the_oldest_goes()
    {
        var first = await Sheets.SheetAsync(SheetKind.Tanks, at: -20);
        foreach (var minute in Enumerable.Range(0, SpreadsheetBook.MostOpen))
        {
            await Sheets.SheetAsync(SheetKind.Tanks, at: minute - 10);
        }

        Assert.Null(await Sheets.Book.FindAsync(first, SomeSheets.Now, Stop));
        Assert.Equal(SpreadsheetBook.MostOpen, (await Sheets.Book.PastAsync(Ben.Id, SomeSheets.Now, Stop)).Count);
    }

    private static IEnumerable<string> Codes(Imported imported) =>
        Assert.IsType<Imported.NotAdded>(imported).Objections.Select(o => o.Code);
}
