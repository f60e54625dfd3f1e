using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.People;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.EndToEnd.Tests.House.SomeEntries;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>A floor on an ordinary day: a tank of each kind, beer in some, yeast on the shelf, jobs, and something done anyway.</summary>
public sealed class FullFloor(TestServer server, Chromium chromium) : IAsyncLifetime
{
    private static readonly Guid FermentingBatch = Guid.CreateVersion7();
    private static readonly Guid FinishedBatch = Guid.CreateVersion7();

    public FloorApp App { get; init; } = new(server, chromium);

    public IReadOnlyList<string> Codes { get; private set; } = [];

    public IReadOnlyList<int> Batches { get; private set; } = [];

    public IReadOnlyList<int> Cultures { get; private set; } = [];

    public IReadOnlyList<Guid> Jobs { get; private set; } = [];

    /// <summary>An entry as any other.</summary>
    public Guid Reading { get; } = Guid.CreateVersion7();

    /// <summary>One that is still to be answered for.</summary>
    public Guid DoneAnyway { get; } = Guid.CreateVersion7();

    /// <summary>The secret of a link that nobody has used.</summary>
    public string Invite { get; private set; } = "";

    /// <summary>One that is looked at, with a row of every fate.</summary>
    public Guid Spreadsheet { get; } = Guid.CreateVersion7();

    /// <summary>One that was imported.</summary>
    public Guid Imported { get; } = Guid.CreateVersion7();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await App.InitializeAsync();
        await App.AddressAsync("https://floor.example");
        var fermenting = await App.AddTankAsync(SomeTanks.PressureRated, "F1");
        await App.LogAsync(Fermenting(fermenting));
        var finished = await App.AddTankAsync(SomeTanks.PressureRated, "P1");
        await App.LogAsync(Finished(finished));
        var bright = await App.AddTankAsync(SomeTanks.Bright, "B1");
        await App.LogAsync(Found(bright, Soil.Sanitized, 3));
        var plastic = await App.AddTankAsync(SomeTanks.PlasticConical, "C1");
        await App.LogAsync(Found(plastic, Soil.Soiled, 50));
        var bucket = await App.AddTankAsync(SomeTanks.Bucket, "U1");
        await App.LogAsync(Found(bucket, Soil.Clean), new PutOutOfService(bucket.Id, "Cracked tap"));
        await App.AddTankAsync(SomeTanks.Bucket, "NEW"); // nothing was ever logged on it
        await App.LogAsync([.. Enumerable.Range(1, 3).Select(day => Received(Guid.CreateVersion7(), 20 * day))]);
        await App.LogAsync([.. Stock()]);
        Codes = [fermenting.Code, finished.Code, bright.Code, plastic.Code, bucket.Code, "NEW"];
        await LookAroundAsync();
        var (owner, now) = (App.Author(FloorApp.Owner).Id, FloorApp.Now);
        await BringSheetsAsync();
        (_, Invite) = await App.Services.GetRequiredService<Invites>().MakeAsync("Imke", Role.Helper, owner, now, Stop);
    }

    public ValueTask DisposeAsync() => App.DisposeAsync();

    private LogEntry[] Fermenting(Tank tank)
    {
        var jar = Guid.CreateVersion7();
        return
        [
            Found(tank, Soil.Clean, 60), // not sanitized: what follows was done anyway
            Received(jar, 70),
            MakingItsOwnGas(Fill(tank, FermentingBatch, 48) with { Id = DoneAnyway }),
            new Pitched(
                tank.Id,
                FermentingBatch,
                [new CulturePitched(jar, YeastAmount.Of(UnitsNet.Volume.FromMilliliters(900)))]
            )
            {
                At = FloorApp.Ago(46),
            },
            Gravity(tank, FermentingBatch, 1.047, 30),
            Gravity(tank, FermentingBatch, 1.038, 18) with
            {
                Note = "Smells of bread and a little of pears, as it should on the second day.",
            },
            Gravity(tank, FermentingBatch, 1.031, 6) with
            {
                Id = Reading,
            },
            new TemperatureSet(tank.Id, SomeTanks.Celsius(19)) { BatchId = FermentingBatch, At = FloorApp.Ago(40) },
            new TemperatureTaken(tank.Id, SomeTanks.Celsius(19.4)) { At = FloorApp.Ago(5) },
        ];
    }

    private static Filled MakingItsOwnGas(Filled filled) =>
        filled with
        {
            NewBatch = filled.NewBatch! with { CarbonDioxideWanted = CarbonDioxideContent.OfVolumes(1.8).Value },
        };

    private static LogEntry[] Finished(Tank tank) =>
        [
            Found(tank, Soil.Sanitized, 301),
            Fill(tank, FinishedBatch, 300, "A beer with rather a long name, brewed for the harvest"),
            Pitch(tank, FinishedBatch, 299),
            Gravity(tank, FinishedBatch, 1.010, 80),
            Gravity(tank, FinishedBatch, 1.010, 26),
            new Dumped(tank.Id, FinishedBatch, Sediment.Yeast, SomeTanks.Litres(1.2)) { At = FloorApp.Ago(20) },
            new PressureTaken(tank.Id, UnitsNet.Pressure.FromKilopascals(60)) { At = FloorApp.Ago(4) },
        ];

    private static IEnumerable<LogEntry> Stock() =>
        [
            OnTheShelf("Peracetic acid, 5 %", ItemKind.Chemical, StockAmount.Of(SomeTanks.Litres(1.2))),
            OnTheShelf("Clamp gasket, 50.5 mm", ItemKind.Part, StockAmount.Of(14)),
        ];

    private async Task BringSheetsAsync()
    {
        var (book, author) = (App.Services.GetRequiredService<SpreadsheetBook>(), App.Author(FloorApp.Owner));
        const string Cells = """
            {"western": true, "sheet": "Cellar", "separator": null, "rows": [
                ["Code", "Type", "Volume (firkin)", "Diameter (mm)", "Height (mm)", "Bottom", "Passivated", "Remark"],
                ["F1", "unitank", "100", "520", "620", "cone", "01.02.2026", ""],
                ["S9", "trough", "a lot", "520,5", "620", "cone", "31.02.2026", "by the door"],
                [],
                ["S8", "bright", "100 L", "520", "620", "flat", {"on": "2026-03-14T00:00:00"}, ""]]}
            """;
        foreach (var id in (Guid[])[Spreadsheet, Imported])
        {
            var sheet = new Spreadsheet(id, SheetKind.Tanks, "our cellar.xlsx", author.Id, FloorApp.Now);
            await book.KeepAsync(sheet with { Cells = Cells }, Stop);
        }

        var import = App.Services.GetRequiredService<SpreadsheetImport>();
        var tank = SomeTanks.Bucket(Guid.CreateVersion7(), "SHEET");
        Assert.IsType<Imported.Done>(await import.ImportAsync(Imported, new([tank], []), author, Stop));
    }

    private async Task LookAroundAsync()
    {
        Batches =
        [
            .. (await App.Reader.BatchesAsync(before: null, 200, Stop)).Floor.Batches.Select(b => b.Thing.Number),
        ];
        Cultures = [.. (await App.Reader.CulturesAsync(Stop)).Floor.Cultures.Select(c => c.Thing.Number)];
        Jobs = [.. (await App.Reader.JobsAsync(Stop)).Jobs.Select(job => job.Id)];
    }
}
