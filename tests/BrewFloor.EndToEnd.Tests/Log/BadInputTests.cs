using System.Net;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Store.Tanks;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>What cannot be: the floor answers with a sentence, logs nothing, and keeps what was typed.</summary>
public sealed class BadInputTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("1.234,5", "Comma and point both stand in this number")]
    [InlineData("1.234.567", "Type the number without gaps or marks for thousands")]
    [InlineData("NaN", "This is not a number")]
    [InlineData("Infinity", "This is not a number")]
    [InlineData("-5", "is expected")]
    [InlineData("about a hundred", "This is not a number")]
    public async Task A_volume_that_is_none_gets_a_sentence(string typed, string sentence)
    {
        var (tank, hanna) = await AtAsync("filled");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        await hanna.TypeAsync("Volume", typed);
        await hanna.TypeAsync("Name of the beer", "Kitchen-table pale");

        await hanna.PressAsync("Fill");

        await hanna.SeesAsync(sentence);
        Assert.Equal(typed, await hanna.TypedAsync("Volume"));
        Assert.Equal("Kitchen-table pale", await hanna.TypedAsync("Name of the beer"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
        await Violations.NoneAsync(hanna);
    }

    [Fact]
    public async Task A_unit_that_is_none_gets_a_sentence()
    {
        var (tank, hanna) = await AtAsync("filled");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        await hanna.TypeAsync("Volume", "100");
        await hanna.TypeAsync("Name of the beer", "Kitchen-table pale");
        await hanna.Page.EvaluateAsync(
            "() => { const unit = document.querySelector('[name=\"volume.unit\"]'); unit.add(new Option('firkin', 'firkin')); unit.value = 'firkin'; }"
        );

        await hanna.PressAsync("Fill");

        await hanna.SeesAsync("\"firkin\" is not a unit that is known here");
        Assert.Equal("100", await hanna.TypedAsync("Volume"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    [Theory]
    [InlineData("2026-03-29T02:30", "The clocks jumped over this hour")]
    [InlineData("2038-01-19T03:14", "Not happened yet")]
    public async Task A_moment_that_never_was_or_is_to_come_gets_a_sentence(string typed, string sentence)
    {
        var (tank, hanna) = await AtAsync("noted");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        await hanna.TypeAsync("Note", "The tap sticks");
        await hanna.TypeAsync("When", typed);

        await hanna.PressAsync("Note");

        await hanna.SeesAsync(sentence);
        Assert.Equal(typed, await hanna.TypedAsync("When"));
        Assert.Equal("The tap sticks", await hanna.TypedAsync("Note"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    [Fact]
    public async Task A_note_too_long_gets_a_sentence_with_both_lengths()
    {
        var (tank, hanna) = await AtAsync("noted");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        var note = new string('n', 4001);
        await hanna.TypeAsync("Note", note);

        await hanna.PressAsync("Note");

        await hanna.SeesAsync("At most 4");
        Assert.Equal(note, await hanna.TypedAsync("Note"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    [Fact]
    public async Task A_form_larger_than_a_megabyte_gets_a_page_with_a_sentence()
    {
        var (tank, hanna) = await AtAsync("noted");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        await hanna.TypeAsync("Note", new string('n', (1024 * 1024) + 1));
        var answer = hanna.Page.WaitForResponseAsync(reply =>
            reply.Request is { Method: "POST", IsNavigationRequest: true }
        );

        await hanna.PressAsync("Note");

        Assert.Equal((int)HttpStatusCode.RequestEntityTooLarge, (await answer).Status);
        await hanna.SeesAsync("larger than 1 MB");
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
        await hanna.Page.GoBackAsync();
        Assert.NotEmpty(await hanna.TypedAsync("Note"));
    }

    [Fact]
    public async Task A_retired_tanks_form_is_refused_and_keeps_what_was_typed()
    {
        var (tank, hanna) = await AtAsync("washed");
        await using var _ = hanna;
        await hanna.ChooseAsync("Cleaner", "Alkaline cleaner");
        await hanna.ChooseAsync("How", "Spray ball");
        await hanna.TypeAsync("Temperature", "55");
        await RetireAsync(tank); // meanwhile, by somebody else
        var before = await floor.EntriesOnAsync(tank);

        await hanna.PressAsync("Wash");

        await hanna.SeesAsync($"{tank.Code} was retired on");
        Assert.Equal("55", await hanna.TypedAsync("Temperature"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    [Theory]
    [InlineData("/tanks/NOT1")]
    [InlineData("/tanks/NOT1/log/filled")]
    [InlineData("/batches/999999")]
    [InlineData("/yeast/999999")]
    [InlineData("/no/such/page")]
    public async Task What_is_not_there_gets_a_page_that_leads_back(string path)
    {
        await using var bert = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone);

        var answer = await bert.OpenAsync(path);

        Assert.Equal((int)HttpStatusCode.NotFound, answer.Status);
        await bert.SeesAsync("No tank, batch, culture or page has this address");
        await bert.PressAsync("To the floor");
        Assert.Equal("/", new Uri(bert.Page.Url).AbsolutePath);
    }

    [Fact]
    public async Task Of_a_group_with_one_bad_entry_none_is_stored()
    {
        var (tank, hanna) = await AtAsync("noted");
        await using var _ = hanna;
        var before = await floor.EntriesOnAsync(tank);
        using var program = await floor.ProgramAsync();

        using var answer = await program.PostAsJsonAsync(
            "/api/v1/log",
            new
            {
                entries = new[]
                {
                    Note(tank, "Good", FloorApp.Ago(0.1)),
                    Note(tank, "Not yet", FloorApp.Ago(-48)),
                    Note(tank, "Good again", FloorApp.Ago(0)),
                },
            },
            Stop
        );

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    private static object Note(Tank tank, string note, DateTimeOffset at) =>
        new
        {
            id = Guid.CreateVersion7(),
            kind = "noted",
            tank = tank.Code,
            note,
            at,
        };

    private async Task<(Tank Tank, Visit Hanna)> AtAsync(string kind)
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Sanitized, 1));
        var hanna = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/{kind}");
        return (tank, hanna);
    }

    private async Task RetireAsync(Tank tank)
    {
        var inventory = floor.Services.GetRequiredService<Inventory>();
        var today = DateOnly.FromDateTime(FloorApp.Now.DateTime);
        Assert.IsType<Edited.Done>(
            await inventory.EditAsync(tank with { RetiredOn = today, Version = 1 }, floor.Author(FloorApp.Owner), Stop)
        );
    }
}
