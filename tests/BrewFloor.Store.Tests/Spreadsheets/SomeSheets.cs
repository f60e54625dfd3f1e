using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Spreadsheets;

/// <summary>Spreadsheets on a fresh floor: kept, imported, undone; and what may stand in them.</summary>
internal sealed class SomeSheets(FreshFloor floor)
{
    public static readonly DateTimeOffset Now = TimeProvider.System.GetUtcNow();

    public SpreadsheetBook Book => new(floor.Database);

    public SpreadsheetImport Import => new(floor.Database, floor.Log);

    public SpreadsheetUndo Undo => new(floor.Database, floor.Log);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async Task<Guid> ImportedAsync(SheetKind kind, Brought brought)
    {
        var sheet = await SheetAsync(kind);
        Assert.Equal(new Imported.Done(Again: false), await Import.ImportAsync(sheet, brought, Ben, Stop));
        return sheet;
    }

    public async Task<Guid> SheetAsync(SheetKind kind, int at = 0)
    {
        var sheet = new Spreadsheet(NewId(), kind, "ours.csv", Ben.Id, Now.AddMinutes(at)) { Cells = "{}" };
        await Book.KeepAsync(sheet, Stop);
        return sheet.Id;
    }

    public static Brought Tanks(params string[] codes)
    {
        Tank[] tanks = [.. codes.Select(code => ATank(NewId(), code.ToUpperInvariant(), 100))];
        return new([.. tanks], [.. tanks.Select(tank => Found(tank.Id))]);
    }

    public static TankTakenOver Found(Guid tank) =>
        new(tank)
        {
            Id = NewId(),
            Soil = Soil.Soiled,
            Closure = Closure.Vented,
        };

    public static Brought Beer(params Guid[] tanks) =>
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

    public static Brought Jars(int count) =>
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

    public async Task<(long, long, long)> CountsAsync() =>
        (
            await floor.AskAsync<long>("SELECT count(*) FROM entries"),
            await floor.AskAsync<long>("SELECT count(*) FROM tanks"),
            await floor.AskAsync<long>("SELECT count(*) FROM thing_changes")
        );
}
