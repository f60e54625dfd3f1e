using System.Net;
using System.Text;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.People;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using static BrewFloor.Web.Tests.Spreadsheets.Bringing;

namespace BrewFloor.Web.Tests.Spreadsheets;

/// <summary>A spreadsheet comes up, its rows' fates are said, and what can be is added; all of it on pages without script.</summary>
public sealed class ImportPagesTests(FloorApp app) : IClassFixture<FloorApp>
{
    private const string Head =
        "Code;Type;Material;Max temp (°C);Volume (L);Diameter (mm);Height (mm);Bottom;Cone angle;State;Closure\n";

    [Fact]
    public async Task Tanks_of_a_spreadsheet_are_looked_at_added_once_and_taken_back()
    {
        var brewer = app.As(Role.Brewer);
        var path = await BringAsync(brewer, "Tanks", Head + ATank("V1") + ATank("V2", volume: "120,5") + "\n");

        var page = await brewer.PageAsync(path);
        HasFates(page, ["Added", "Added"]);
        Assert.Null(await TankAsync("V1"));
        var sends = await Task.WhenAll(
            brewer.SendFormAsync(path, page, "import"),
            brewer.SendFormAsync(path, page, "import")
        );

        Assert.All(sends, sent => Assert.True(sent.StatusCode is HttpStatusCode.Found or HttpStatusCode.OK));
        Assert.Equal(
            (120.5, Soil.Soiled),
            (await TankAsync("V2")) is { } v2 ? (v2.Thing.Working.Liters, v2.State.Soil) : default
        );
        Assert.Equal(1, await app.AskAsync<long>("SELECT count(*) FROM tanks WHERE code = 'V1'"));

        var undone = await brewer.SendFormAsync(path, "undo");
        Assert.Equal(HttpStatusCode.Found, undone.StatusCode);
        Assert.Contains(
            "taken back",
            (await brewer.PageAsync(path)).QuerySelector("main").Words(),
            StringComparison.Ordinal
        );
        Assert.True((await TankAsync("V1"))!.Value.Thing.IsRetired);

        var again = await BringAsync(brewer, "Tanks", Head + ATank("V1", volume: "110"));
        HasFates(await brewer.PageAsync(again), ["Added"]);
        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(again, "import")).StatusCode);
        Assert.Equal(110, (await TankAsync("V1"))!.Value.Thing.Working.Liters);
    }

    [Fact]
    public async Task Every_row_has_a_fate_and_a_bad_one_says_its_column_its_value_and_what_would_be_right()
    {
        await app.TankAsync("W0");
        var brewer = app.As(Role.Brewer);
        var text =
            Head
            + ATank("W0")
            + ATank("W1", type: "trough")
            + ATank("W2", volume: "a lot")
            + "\n"
            + ATank("W3")
            + ATank("w3")
            + ATank("TOO-LONG")
            + ATank("W4");

        var page = await brewer.PageAsync(await BringAsync(brewer, "Tanks", text));

        HasFates(
            page,
            ["AlreadyThere", "CannotBe", "CannotBe", "Skipped", "CannotBe", "CannotBe", "CannotBe", "Added"]
        );
        var rows = page.QuerySelectorAll(".fates li").Select(row => row.Words()).ToArray();
        Assert.Contains(
            "Column \"Type\", value \"trough\": This word is not known here. Known are: Conical fermenter",
            rows[1],
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Column \"Volume (L)\", value \"a lot\": This is not a number",
            rows[2],
            StringComparison.Ordinal
        );
        Assert.Contains("it stands in rows 6, 7", rows[4], StringComparison.Ordinal);
        Assert.Contains("TOO-LONG", rows[6], StringComparison.Ordinal);
        Assert.Contains("Add 1, leave out 5", page.QuerySelector("main").Words(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_column_says_is_said_once_for_every_row()
    {
        var brewer = app.As(Role.Brewer);
        var path = await BringAsync(
            brewer,
            "Tanks",
            "Vessel;Volume (gal);Diameter (cm);Height (cm);Bottom\nX1;30;52;62;flat\nX2;30;52;62;flat"
        );
        HasFates(await brewer.PageAsync(path), ["CannotBe", "CannotBe"]);

        var matched = await brewer.SendFormAsync(
            path,
            "match",
            ("all.type", "BrightTank"),
            ("all.material", "Stainless"),
            ("all.highest-cleaning", "185"),
            ("all.highest-cleaning.unit", "°F")
        );

        HasFates(await matched.PageAsync(), ["Added", "Added"]);
        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(path, "import")).StatusCode);
        var tank = (await TankAsync("X2"))!.Value.Thing;
        Assert.Equal(
            (85, 113.56),
            (Math.Round(tank.HighestCleaning.DegreesCelsius), Math.Round(tank.Working.Liters, 2))
        );
        Assert.Equal(520, Math.Round(((Brewing.Tanks.VesselShape)tank.Strapping).Diameter.Millimeters));
    }

    [Fact]
    public async Task A_column_that_was_guessed_wrong_is_changed_by_hand()
    {
        var brewer = app.As(Role.Brewer);
        var path = await BringAsync(brewer, "Cultures", "Beast;Sort;Slurry;Gen\nHouse ale;jar;0,8 L;3");
        HasFates(await brewer.PageAsync(path), ["CannotBe"]);

        var matched = await brewer.SendFormAsync(path, "match", ("c.0.field", "strain"), ("c.1.field", "kind"));

        HasFates(await matched.PageAsync(), ["Added"]);
        await brewer.SendFormAsync(path, "import");
        var jars = (await app.Get<FloorReader>().CulturesAsync(FloorApp.Stop)).Floor.Cultures;
        var jar = Assert.Single(jars, culture => culture.Thing.Strain is "House ale");
        Assert.Equal(
            (800, 3, true),
            (jar.State.Amount.Milliliters, jar.State.Generation, jar.State.IsGenerationAtLeast)
        );

        var same = await BringAsync(
            brewer,
            "Cultures",
            "Strain;Kind;Slurry;Gen\nhouse ale;slurry;800;3\nHouse ale;slurry;800;3"
        );
        HasFates(await brewer.PageAsync(same), ["AlreadyThere", "Added"]); // one jar answers for one row
    }

    [Fact]
    public async Task Beer_that_is_in_a_tank_is_taken_over_and_what_is_drunk_is_not()
    {
        await app.TankAsync("Y1");
        await app.TankAsync("Y2");
        var brewer = app.As(Role.Brewer);
        const string Text =
            "Batch,Beer,Tank,Ale or lager,OG,Volume (L),Filled,Status\n"
            + "17,Dunkel,Y1,lager,12.5,500,14.03.2026,fermenting\n"
            + "16,Helles,Y2,lager,11.5,500,13.02.2026,packaged\n"
            + "15,Bock,,lager,16.5,500,13.01.2026,\n"
            + "14,Alt,Y9,ale,11.9,500,13.01.2026,\n"
            + "13,Porter,Y2,ale,13.9,9000,31.02.2026,\n";

        var path = await BringAsync(brewer, "Batches", Text);
        var page = await brewer.PageAsync(path);

        HasFates(page, ["Added", "CannotBe", "CannotBe", "CannotBe", "CannotBe"]);
        Assert.Contains(
            "There is no such day",
            page.QuerySelectorAll(".fates li")[4].Words(),
            StringComparison.Ordinal
        );
        Assert.Equal(HttpStatusCode.Found, (await brewer.SendFormAsync(path, "import")).StatusCode);
        Assert.True((await TankAsync("Y1"))!.Value.State.HoldsBeer);
        HasFates(
            await brewer.PageAsync(await BringAsync(brewer, "Batches", "Beer,Tank,Ale or lager\ndunkel,y1,lager")),
            ["AlreadyThere"]
        );
        var full = await brewer.PageAsync(
            await BringAsync(brewer, "Batches", "Beer,Tank,Ale or lager,Volume (L)\nBock,Y1,lager,1\nAlt,Y2,ale,9000")
        );
        HasFates(full, ["CannotBe", "CannotBe"]); // by the guards of the floor
    }

    [Fact]
    public async Task What_moved_since_it_was_looked_at_is_looked_at_again()
    {
        var brewer = app.As(Role.Brewer);
        var path = await BringAsync(brewer, "Tanks", Head + ATank("Z1") + ATank("Z2"));
        var seen = await brewer.PageAsync(path);
        await app.TankAsync("Z2");

        var answer = await brewer.SendFormAsync(path, seen, "import");

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        HasFates(await answer.PageAsync(), ["Added", "AlreadyThere"]);
        Assert.Null(await TankAsync("Z1"));
    }

    [Fact]
    public async Task Work_upon_an_import_is_named_when_somebody_wants_it_undone()
    {
        var brewer = app.As(Role.Brewer);
        var path = await BringAsync(brewer, "Tanks", Head + ATank("U7"));
        await brewer.SendFormAsync(path, "import");
        await app.AppendAsync(FreshFloor.Note((await TankAsync("U7"))!.Value.Thing.Id, "dented"));

        var answer = await brewer.SendFormAsync(path, "undo");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("U7", (await answer.PageAsync()).QuerySelector(".objection").Words(), StringComparison.Ordinal);
        Assert.False((await TankAsync("U7"))!.Value.Thing.IsRetired);
    }

    [Theory]
    [InlineData("", "No file came")]
    [InlineData(" \n \n", "Nothing stands in this file")]
    [InlineData("\u0000\u0001\u0002", "can't be read as a spreadsheet")]
    public async Task What_is_no_spreadsheet_gets_a_sentence(string text, string sentence)
    {
        var answer = await SendAsync(app.As(Role.Brewer), "Tanks", Encoding.UTF8.GetBytes(text));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(
            sentence,
            (await answer.PageAsync()).QuerySelector("[role=alert]").Words(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_is_too_large_gets_a_sentence_and_what_is_far_too_large_an_answer()
    {
        var brewer = app.As(Role.Brewer);

        var large = await SendAsync(brewer, "Tanks", new byte[3 * 1024 * 1024]);
        Assert.Contains(
            "larger than 2 MB",
            (await large.PageAsync()).QuerySelector("[role=alert]").Words(),
            StringComparison.Ordinal
        );
        Assert.Equal(
            HttpStatusCode.RequestEntityTooLarge,
            (await SendAsync(brewer, "Tanks", new byte[10 * 1024 * 1024])).StatusCode
        );
    }

    [Fact]
    public async Task Somebody_elses_open_spreadsheet_is_not_shown_and_an_imported_one_is()
    {
        var path = await BringAsync(app.As(Role.Brewer), "Tanks", Head + ATank("T9"));

        Assert.Equal(HttpStatusCode.NotFound, (await app.As(Role.Owner).GetAsync(path, FloorApp.Stop)).StatusCode);
        await app.As(Role.Brewer).SendFormAsync(path, "import");
        Assert.Contains(
            "Imported",
            (await app.As(Role.Owner).PageAsync(path)).QuerySelector("main").Words(),
            StringComparison.Ordinal
        );
        Assert.NotEqual(HttpStatusCode.OK, (await app.As(Role.Helper).GetAsync(path, FloorApp.Stop)).StatusCode);
    }

    [Fact]
    public async Task A_template_comes_back_as_a_spreadsheet_whose_row_can_be()
    {
        var brewer = app.As(Role.Brewer);
        var template = await brewer.GetByteArrayAsync("/import/template/tanks", FloorApp.Stop);

        var sent = await SendAsync(brewer, "Tanks", template);

        HasFates(await brewer.PageAsync(sent.Headers.Location!.ToString()), ["Added"]);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await brewer.GetAsync("/import/template/kegs", FloorApp.Stop)).StatusCode
        );
    }

    private static string ATank(string code, string type = "conical", string volume = "120") =>
        $"{code};{type};stainless;85;{volume};520;620;cone;60°;dirty;vented\n";

    private async Task<(Domain.Tanks.Tank Thing, Domain.Tanks.TankState State)?> TankAsync(string code) =>
        (await app.Get<FloorReader>().TankAsync(code, FloorApp.Stop))?.Floor.Tanks[0];
}
