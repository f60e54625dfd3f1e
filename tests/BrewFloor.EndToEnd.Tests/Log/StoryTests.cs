using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>A batch from a soiled tank to yeast in the fridge, by people with one phone; with script and without.</summary>
public sealed class StoryTests(FloorApp floor) : IClassFixture<FloorApp>
{
    public static TheoryData<bool> WithAndWithoutScript => [true, false];

    [Theory]
    [MemberData(nameof(WithAndWithoutScript))]
    public async Task A_soiled_tank_is_made_ready_and_brings_a_batch_and_its_yeast(bool hasScript)
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Soiled) with { Gas = Gas.CarbonDioxide });
        var phone = Screen.Phone with { HasScript = hasScript };
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, phone);

        await MakesItCleanAsync(hanna, tank);
        await IsStoppedFromFillingAsync(hanna, tank);
        await SanitizesAsync(hanna, tank);
        await FillsAndPitchesAsync(hanna, tank);
        await ReadsAndCorrectsAsync(hanna, tank);
        await DumpsAndHarvestsAsync(hanna, tank);
        await StrikesOutAsync(hanna, tank);
    }

    [Theory]
    [MemberData(nameof(WithAndWithoutScript))]
    public async Task What_was_done_over_a_stop_is_marked_and_a_brewer_answers_for_it(bool hasScript)
    {
        var tank = await floor.AddTankAsync(SomeTanks.PlasticConical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Clean));
        var phone = Screen.Phone with { HasScript = hasScript };
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, phone);

        await FillsAsync(hanna, tank, "Leftover mild", "40");
        await hanna.SeesAsync("Not logged yet");
        await hanna.UnfoldAsync("It already happened");
        await hanna.TickAsync("It already happened. Log it as done anyway.");
        await hanna.TypeAsync("Why it was done", "The kettle was boiling over");
        await hanna.PressAsync("Fill");

        await hanna.SeesAsync("Done anyway: The kettle was boiling over");
        await using var bert = await floor.VisitAsync(FloorApp.Brewer, phone);
        await bert.OpenAsync($"/tanks/{tank.Code}");
        await bert.PressAsync("Answer for it");
        await bert.TypeAsync("What came of it", "Tasted on day 3: clean");
        await bert.PressAsync("Answer for it");
        await bert.OpenAsync($"/tanks/{tank.Code}");
        await bert.SeesNotAsync("Answer for it,");
        await bert.SeesAsync("Tasted on day 3: clean");
    }

    private static async Task MakesItCleanAsync(Visit hanna, Tank tank)
    {
        await hanna.OpenAsync("/");
        await hanna.PressAsync(
            hanna.Main.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = tank.Code + " " }).First
        );
        await hanna.PressAsync("Air");
        await hanna.SeesAsync("knocks out without warning");
        await hanna.PressAsync("Air");
        await hanna.SeesAsync("On the server");

        await hanna.PressAsync("Wash");
        await hanna.ChooseAsync("Cleaner", "Alkaline cleaner");
        await hanna.ChooseAsync("How", "Spray ball");
        await hanna.TypeAsync("Concentration", "20 g/L");
        await hanna.TypeAsync("Temperature", "55", "°C");
        await hanna.TypeAsync("Contact", "30", "min");
        await hanna.PressAsync("Wash");

        await hanna.PressAsync("Rinse");
        await hanna.PressAsync("Rinse");
        await hanna.PressAsync("Inspect");
        await hanna.ChooseAsync("How", "Torch through a port");
        await hanna.ChooseAsync("Result", "Passed");
        await hanna.PressAsync("Inspect");
        await hanna.SeesAsync("Clean since");
    }

    private async Task IsStoppedFromFillingAsync(Visit hanna, Tank tank)
    {
        var before = await floor.EntriesOnAsync(tank);
        await FillsAsync(hanna, tank, "Kitchen-table pale", "100,5");

        await hanna.SeesAsync("Not logged yet");
        await hanna.SeesAsync($"{tank.Code} is not sanitized");
        Assert.Equal("100,5", await hanna.TypedAsync("Volume"));
        Assert.Equal("Kitchen-table pale", await hanna.TypedAsync("Name of the beer"));
        Assert.Equal(before, await floor.EntriesOnAsync(tank));
    }

    private static async Task SanitizesAsync(Visit hanna, Tank tank)
    {
        await hanna.OpenAsync($"/tanks/{tank.Code}");
        await hanna.PressAsync("Sanitize");
        await hanna.ChooseAsync("Sanitizer", "Peracetic acid");
        await hanna.ChooseAsync("How", "Spray ball");
        await hanna.TypeAsync("Contact", "10", "min");
        await hanna.PressAsync("Sanitize");
        await hanna.SeesAsync("Sanitizer in it");

        await hanna.PressAsync("Drain");
        await hanna.ChooseAsync("How it stands now", "Lid on, vent open");
        await hanna.PressAsync("Drain");
        await hanna.SeesAsync("Contact too short");
        await hanna.TypeAsync("Why it is all right", "Timed at the pump: ten minutes");
        await hanna.PressAsync("Drain");
        await hanna.SeesAsync("Sanitized until");
    }

    private static async Task FillsAndPitchesAsync(Visit hanna, Tank tank)
    {
        await FillsAsync(hanna, tank, "Kitchen-table pale", "100,5");
        await hanna.SeesAsync("100.5 L");

        await hanna.OpenAsync("/yeast");
        await hanna.PressAsync("Receive yeast");
        await hanna.TypeAsync("Strain", $"House ale of {tank.Code}");
        await hanna.ChooseAsync("Kind", "Liquid pack");
        await hanna.TypeAsync("How much", "1000", "mL");
        await hanna.TypeAsync("Kept at", "4", "°C");
        await hanna.PressAsync("Receive yeast");

        await hanna.OpenAsync($"/tanks/{tank.Code}");
        await hanna.PressAsync("Pitch");
        await hanna.ChooseCultureAsync(tank.Code);
        await hanna.TypeAsync("How much", "1000", "mL");
        await hanna.PressAsync("Pitch");
        await hanna.SeesAsync("Pitched 1");
    }

    private static async Task ReadsAndCorrectsAsync(Visit hanna, Tank tank)
    {
        await hanna.PressAsync("Take gravity");
        await hanna.TypeAsync("Gravity", "1.047", "SG");
        await hanna.TypeAsync("Sample temperature", "20", "°C");
        await hanna.PressAsync("Take gravity");
        await hanna.SeesAsync("Gravity 1.047");

        await hanna.ChangeAsync("Gravity 1.047", "Correct");
        Assert.Equal("1.047", await hanna.TypedAsync("Gravity"));
        await hanna.TypeAsync("Gravity", "1.049");
        await hanna.TypeAsync("Why it is corrected", "Read the wrong line");
        await hanna.PressAsync("Correct");
        await hanna.SeesAsync("Gravity 1.049");
        await hanna.SeesAsync("Corrected by Hanna: Read the wrong line");
    }

    private static async Task DumpsAndHarvestsAsync(Visit hanna, Tank tank)
    {
        await hanna.PressAsync("Dump sediment");
        await hanna.ChooseAsync("What", "Trub");
        await hanna.TypeAsync("Volume", "1.5", "L");
        await hanna.PressAsync("Dump sediment");
        await hanna.SeesAsync("Dumped trub, 1.5 L");

        await hanna.UnfoldAsync("All entries");
        await hanna.PressAsync("Harvest yeast");
        Assert.Equal($"House ale of {tank.Code}", await hanna.TypedAsync("Strain"));
        await hanna.TypeAsync("Volume", "600", "mL");
        await hanna.PressAsync("Harvest yeast");
        await hanna.SeesAsync("Yeast harvested 600 mL");
        await hanna.OpenAsync("/yeast");
        await hanna.SeesAsync("gen 1");
    }

    private static async Task StrikesOutAsync(Visit hanna, Tank tank)
    {
        await hanna.OpenAsync($"/tanks/{tank.Code}");
        await hanna.UnfoldAsync("All entries");
        await hanna.PressAsync("Note");
        await hanna.TypeAsync("Note", "Belongs to another tank");
        await hanna.PressAsync("Note");
        await hanna.PressAsync("Strike out");
        await hanna.TypeAsync("Why", "Wrong tank");
        await hanna.PressAsync("Strike out");
        await hanna.SeesAsync("Struck out by Hanna: Wrong tank");
    }

    private static async Task FillsAsync(Visit hanna, Tank tank, string beer, string litres)
    {
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/filled");
        await hanna.TypeAsync("Volume", litres, "L");
        await hanna.TypeAsync("Name of the beer", beer);
        await hanna.TypeAsync("Original gravity", "1.050", "SG");
        await hanna.PressAsync("Fill");
    }
}
