using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;

namespace BrewFloor.EndToEnd.Tests.Account;

/// <summary>A floor that nobody has set up yet, and the first person to open it.</summary>
public sealed class SetupTests(TestServer server, Chromium chromium) : IAsyncLifetime
{
    private readonly FloorApp _floor = new(server, chromium) { HasPeople = false };

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sunlight")]
    public async Task The_first_page_of_a_new_floor_asks_for_its_owner(string theme)
    {
        await using var olga = await _floor.StrangerAsync(Screen.Phone with { Theme = theme });

        await olga.OpenAsync("/");

        await olga.ShotIfWantedAsync($"setup-{theme}");
        Assert.EndsWith("/setup", olga.Page.Url, StringComparison.Ordinal);
        await Violations.NoneAsync(olga);
        Assert.Empty(await Measures.TooWideAsync(olga, 360));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Whoever_reads_the_console_owns_the_floor_and_stands_on_it(bool hasScript)
    {
        await using var olga = await _floor.StrangerAsync(Screen.Phone with { HasScript = hasScript });
        await olga.OpenAsync("/setup");
        await FillInAsync(olga, "not the code");

        await olga.PressAsync("Take over this floor");
        await olga.SeesAsync("This code is not right");
        Assert.Equal("Quillmoor", await olga.TypedAsync("What the place is called"));
        await FillInAsync(olga, _floor.Services.GetRequiredService<SetupToken>().Text);
        await olga.PressAsync("Take over this floor");

        await olga.ShotIfWantedAsync($"set-up-{hasScript}");
        await olga.SeesAsync("tank");
        Assert.EndsWith("/", olga.Page.Url, StringComparison.Ordinal);
    }

    private static async Task FillInAsync(Visit olga, string token)
    {
        await olga.TypeAsync("Code from the console", token);
        await olga.TypeAsync("Your name", "Olga");
        await olga.TypeAsync("A password", FloorApp.Password);
        await olga.TypeAsync("What the place is called", "Quillmoor");
        await olga.TypeAsync("Altitude above sea level", "120");
    }
}
