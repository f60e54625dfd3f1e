using BrewFloor.EndToEnd.Tests.House;
using Microsoft.Playwright;

namespace BrewFloor.EndToEnd.Tests.Calculators;

/// <summary>Four questions on a phone, with and without script, and the same page on paper.</summary>
public sealed class CalculatorTests(FullFloor floor) : IClassFixture<FullFloor>
{
    /// <summary>Where, what is typed under which label, and the answer that must come out.</summary>
    public static TheoryData<string, string, string, string> Questions =>
        new()
        {
            { "slurry", "Wort", "500", "5.51" }, // 500 L of 11.91 °P: 5.95e12 cells, over 1.2e9 and 0.9
            { "spunding", "Final gravity", "1.012", "1.0158" }, // 3.56 g/L to come are 0.94 °P, 3.8 points
            { "carbonation", "Temperature", "10", "2.25" }, // 4.42 g/L over 1.9635
            { "crash-time", "Beer", "200", "3.4" }, // 818 kJ/K over 96 W/K, times ln 4.2
        };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task It_answers_while_somebody_types_and_the_address_keeps_the_numbers(
        string name,
        string label,
        string typed,
        string answer
    )
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Phone);
        await vera.OpenAsync($"/calculators/{name}");

        await vera.TypeAsync(label, typed);

        await SeesAsync(vera, answer);
        await vera.Page.WaitForURLAsync(url => url.Contains($"={typed}", StringComparison.Ordinal));
        await vera.OpenAsync(vera.Page.Url);
        Assert.Equal(typed, await vera.TypedAsync(label));
        await SeesAsync(vera, answer);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task It_answers_without_script_when_the_slab_is_pressed(
        string name,
        string label,
        string typed,
        string answer
    )
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Phone with { HasScript = false });
        await vera.OpenAsync($"/calculators/{name}");

        await vera.TypeAsync(label, typed);
        await vera.PressAsync("Work it out");

        await SeesAsync(vera, answer);
        Assert.Equal(typed, await vera.TypedAsync(label));
    }

    [Fact]
    public async Task What_was_typed_wrong_is_told_below_the_field_at_once_and_the_page_stays()
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Phone);
        await vera.OpenAsync("/calculators/carbonation");

        await vera.TypeAsync("Temperature", "60");

        await Assertions
            .Expect(vera.Page.Locator("#c-temperature-note"))
            .ToContainTextAsync("Between 0 and 40 °C is expected.");
        Assert.Equal("true", await vera.Field("Temperature").GetAttributeAsync("aria-invalid"));
        Assert.Equal("60", await vera.TypedAsync("Temperature"));

        await vera.TypeAsync("Temperature", "6");
        await Assertions.Expect(vera.Page.Locator("#c-temperature-note")).ToBeEmptyAsync();
        Assert.Null(await vera.Field("Temperature").GetAttributeAsync("aria-invalid"));
    }

    [Fact]
    public async Task What_is_open_stays_open_while_somebody_types()
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Desk);
        await vera.OpenAsync("/calculators/slurry");
        await vera.UnfoldAsync("How this is computed");

        await vera.TypeAsync("Wort", "50");

        await SeesAsync(vera, "551");
        await Assertions.Expect(vera.Page.Locator("#calc-how details")).ToHaveAttributeAsync("open", "");
        await vera.SeesAsync("Suihko, Vilpola, Linko 1993");
    }

    [Fact]
    public async Task On_paper_stand_the_question_the_numbers_and_the_answer()
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Desk);
        await vera.OpenAsync("/calculators/sealed-crash?beer=90&headspace=10");
        await vera.Page.EmulateMediaAsync(new() { Media = Media.Print });

        await Assertions.Expect(vera.Page.Locator("#calc-answer")).ToBeVisibleAsync();
        await Assertions.Expect(vera.Page.Locator(".hazard").First).ToBeVisibleAsync();
        await Assertions.Expect(vera.Field("Beer")).ToBeVisibleAsync();
        await Assertions.Expect(vera.Page.Locator(".save")).ToBeHiddenAsync();
        await Assertions.Expect(vera.Page.Locator("#calc-how dd").First).ToBeVisibleAsync();
        await vera.ShotIfWantedAsync("calculator-print");
    }

    [Fact]
    public async Task They_are_found_from_more()
    {
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Phone);
        await vera.OpenAsync("/more");

        await vera.PressAsync("Calculators");
        await vera.PressAsync("How much slurry do I pitch?");

        await vera.SeesAsync("Nobody counted this slurry");
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sunlight")]
    public async Task Pictures_are_taken_when_wanted(string theme)
    {
        foreach (var screen in (Screen[])[Screen.Phone, Screen.Desk])
        {
            await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, screen with { Theme = theme });
            foreach (var name in (string[])["slurry", "spunding", "sealed-crash", "spray-ball", "room"])
            {
                await vera.OpenAsync($"/calculators/{name}");
                await vera.ShotIfWantedAsync($"calc-{name}-{screen.Width}-{theme}");
                await Assertions.Expect(vera.Page.Locator("#calc-answer dd").First).ToBeVisibleAsync();
            }
        }
    }

    private static async Task SeesAsync(Visit visit, string answer) =>
        await Assertions.Expect(visit.Page.Locator("#calc-answer dd").First).ToContainTextAsync(answer);
}
