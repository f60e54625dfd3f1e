using BrewFloor.Store.Backups;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Log;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Store.Tests.PrivateServer;

namespace BrewFloor.Store.Tests.Backups;

/// <summary>The floor goes out as files and comes in again, the same to the last hash.</summary>
public sealed class FloorExportTests(TestServer server) : IAsyncLifetime
{
    private const string Formula = "=HYPERLINK(\"x\"), said \"Ann\"";

    private readonly FreshFloor _floor = new(server);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-export-");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Folder => Path.Combine(_folder.FullName, "club");

    private FloorExport Export => new(new DatabaseAddress.Given(_floor.Connections));

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public async ValueTask DisposeAsync()
    {
        await _floor.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    [Fact]
    public async Task A_floor_with_corrected_struck_and_late_entries_comes_in_again_to_equal_hashes()
    {
        await new RandomLog(_floor, seed: 11).PlayAsync(log =>
            log.BackDated >= 2 && log.Random.Counts.Values.Sum() > 150
        );
        await new Accounts(_floor).AddAsync(
            "Ann",
            Domain.People.Role.Owner,
            "hash-of-ann",
            false,
            TimeProvider.System.GetUtcNow(),
            Stop
        );
        await Export.ExportAsync(Folder, Stop);
        var to = await server.EmptyDatabaseAsync(Stop);

        await new FloorImport(new DatabaseAddress.Given(to)).ImportAsync(Folder, Stop);

        var (before, after) = (await TallyAsync(_floor.Connections.Owner), await TallyAsync(to.Owner));
        Assert.Empty(after.DifferFrom(before).Except(["people", "states", "snapshots"])); // passwords; when they change next; when made
        Assert.Equal(before.Tables["entries"], after.Tables["entries"]);
        Assert.Empty(
            (await Tally.AtAsync(_floor.Connections.Owner, Tally.OfFoldsAsync, Stop)).DifferFrom(
                await Tally.AtAsync(to.Owner, Tally.OfFoldsAsync, Stop)
            )
        );
        Assert.Equal(
            "Ann ",
            await FolderUnderTest.AskAsync(to.Owner, "SELECT concat(name, ' ', password_hash) FROM people")
        );
    }

    [Fact]
    public async Task The_next_entry_after_an_import_gets_the_next_number()
    {
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, "Before", FreshFloor.Ago(2)));
        await Export.ExportAsync(Folder, Stop);
        var to = await server.NewDatabaseAsync(Stop);
        await new FloorImport(new DatabaseAddress.Given(to)).ImportAsync(Folder, Stop);
        await using var database = StoreSetup.DataSource(to.Application);

        var log = new Store.Log.FloorLog(database, new());
        var appended = await log.AppendAsync(
            FreshFloor.Request(FreshFloor.Ann, FreshFloor.Note(FreshFloor.K3, "After")),
            Stop
        );

        var last = await _floor.AskAsync<long>("SELECT max(seq) FROM entries");
        Assert.Equal(last + 1, Assert.Single(appended.Stored()).Seq);
    }

    [Fact]
    public async Task What_somebody_typed_is_no_formula_in_a_spreadsheet_and_as_typed_in_the_lines()
    {
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, Formula, FreshFloor.Ago(2)));
        await Export.ExportAsync(Folder, Stop);

        var sheet = await File.ReadAllTextAsync($"{Folder}/entries.csv", Stop);
        Assert.Contains(",\"'=HYPERLINK(\"\"x\"\"), said \"\"Ann\"\"\",", sheet, StringComparison.Ordinal);
        Assert.Contains(
            "\"note\":\"=HYPERLINK(",
            (await File.ReadAllTextAsync($"{Folder}/entries.jsonl", Stop)).Replace(" ", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("""["=1+1", "+1", "-1", "@x", "\tx", "\rx", "\nx"]""", "'=1+1,'+1,'-1,'@x,'\tx,\"'\rx\",\"'\nx\"")]
    [InlineData("""["a=1", "1-1", "", "plain"]""", "a=1,1-1,,plain")]
    [InlineData("""[-5, 1.50, true, null, {"a": 1}]""", "-5,1.50,true,,\"{\"\"a\"\": 1}\"")]
    public void A_cell_that_begins_like_a_formula_is_marked_and_a_number_is_not(string cells, string line)
    {
        using var array = System.Text.Json.JsonDocument.Parse(cells);
        var row = string.Join(
            ',',
            array.RootElement.EnumerateArray().Select((cell, n) => $"\"c{n}\": {cell.GetRawText()}")
        );
        using var json = System.Text.Json.JsonDocument.Parse($"{{{row}}}");

        Assert.Equal(line, CsvLine.Of(json.RootElement));
    }

    [Fact]
    public async Task No_secret_is_in_any_file()
    {
        var accounts = new Accounts(_floor);
        await accounts.AddAsync(
            "Ann",
            Domain.People.Role.Owner,
            "hash-of-ann",
            false,
            TimeProvider.System.GetUtcNow(),
            Stop
        );
        var (_, token) = (
            await new Tokens(_floor).AddAsync("gauge", ["read"], by: null, TimeProvider.System.GetUtcNow(), Stop)
        )!.Value;
        var stamp = (await _floor.AskAsync<Guid>("SELECT security_stamp FROM people")).ToString();
        await Export.ExportAsync(Folder, Stop);

        var all = string.Concat(Directory.GetFiles(Folder).Select(File.ReadAllText));
        Assert.Contains("Ann", all, StringComparison.Ordinal); // the files are looked into
        Assert.All(
            (string[])["hash-of-ann", stamp, token, "gauge"],
            secret => Assert.DoesNotContain(secret, all, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Every_table_is_exported_or_left_out_for_a_reason()
    {
        var tables = await FolderUnderTest.AskAsync(
            _floor.Connections.Owner,
            "SELECT string_agg(relname, ' ' ORDER BY relname COLLATE \"C\") FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') AND NOT relispartition"
        );

        Assert.Equal(
            ((string)tables!).Split(' ').Order(StringComparer.Ordinal),
            ExportedTables.InOrder.Concat(ExportedTables.LeftOut).Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("entries.jsonl", "Smells of apples", "Smells of pears", "export-altered")]
    [InlineData("entries.jsonl", "\"seq\"", "\"sequence\"", "export-altered")]
    [InlineData("tanks.jsonl", "{", "[", "export-altered")]
    [InlineData("export.json", "\"format\": 1", "\"format\": 2", "backup-newer")]
    [InlineData("export.json", "\"schema\": \"2", "\"schema\": \"3", "backup-newer")]
    [InlineData("export.json", "{", "", "not-an-export")]
    public async Task An_export_that_was_changed_by_hand_imports_nothing(
        string file,
        string was,
        string now,
        string code
    )
    {
        await _floor.SendAsync(FreshFloor.Note(FreshFloor.K3, "Smells of apples", FreshFloor.Ago(2)));
        await Export.ExportAsync(Folder, Stop);
        var path = Path.Combine(Folder, file);
        var text = await File.ReadAllTextAsync(path, Stop);
        Assert.Contains(was, text, StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, text.Replace(was, now, StringComparison.Ordinal), Stop);
        var to = await server.EmptyDatabaseAsync(Stop);

        var import = () => new FloorImport(new DatabaseAddress.Given(to)).ImportAsync(Folder, Stop);

        Assert.Equal(code, (await Assert.ThrowsAsync<PrivateServerProblem>(import)).Code);
        Assert.Equal(
            0L,
            await FolderUnderTest.AskAsync(
                to.Owner,
                "SELECT count(*) FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r'"
            )
        );
    }

    [Fact]
    public async Task An_export_of_the_first_schema_is_brought_up_to_date()
    {
        var old = await server.EmptyDatabaseAsync(Stop);
        await Migrator.MigrateAsync(
            old.Owner,
            "Europe/Berlin",
            Snapshot.KnownSchemas.Where(id => id.Length > 0).Min(),
            Stop
        );
        await FolderUnderTest.AskAsync(old.Owner, "UPDATE site SET name = 'The shed'");
        await new FloorExport(new DatabaseAddress.Given(old)).ExportAsync(Folder, Stop);
        var to = await server.EmptyDatabaseAsync(Stop);

        await new FloorImport(new DatabaseAddress.Given(to)).ImportAsync(Folder, Stop);

        Assert.Equal("The shed", await FolderUnderTest.AskAsync(to.Application, "SELECT name FROM site"));
        Assert.Equal(0L, await FolderUnderTest.AskAsync(to.Application, "SELECT count(*) FROM backups"));
    }

    [Fact]
    public async Task A_folder_with_something_in_it_and_a_place_with_something_in_it_are_left_alone()
    {
        await Export.ExportAsync(Folder, Stop);
        var address = new DatabaseAddress.Given(_floor.Connections);

        Assert.Equal(
            "folder-taken",
            (await Assert.ThrowsAsync<PrivateServerProblem>(() => Export.ExportAsync(Folder, Stop))).Code
        );
        Assert.Equal(
            "place-not-empty",
            (
                await Assert.ThrowsAsync<PrivateServerProblem>(() => new FloorImport(address).ImportAsync(Folder, Stop))
            ).Code
        );
        Assert.Equal(
            "not-an-export",
            (
                await Assert.ThrowsAsync<PrivateServerProblem>(() =>
                    new FloorImport(address).ImportAsync(_folder.FullName, Stop)
                )
            ).Code
        );
        Assert.False(Directory.Exists(Folder + ".part"));
    }

    private static Task<Tally> TallyAsync(string owner) => Tally.AtAsync(owner, Tally.OfTablesAsync, Stop);
}
