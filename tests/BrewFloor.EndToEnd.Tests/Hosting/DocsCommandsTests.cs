using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Hosting;

/// <summary>The docs for whoever runs the floor, typed as they stand there.</summary>
/// <remarks>Every command that these pages show has to be typed here: one that is added makes the first test red.</remarks>
[Collection(nameof(Drills))] // the published app and a server of its own, as they have
public sealed class DocsCommandsTests(Chromium chromium) : IDisposable
{
    private readonly Keyboard _keyboard = new();
    private readonly DocsCommands _docs = new("install", "people", "watch", "backup", "export");

    [Fact]
    public async Task A_floor_is_installed_and_used_backed_up_upgraded_and_restored_by_what_they_say()
    {
        await StartAsync("install", "./brewfloor start");
        var owner = await TypeAsync("install", "user add");
        await TypeAsync("people", "user add");
        Assert.Equal("Maive\towner\nOlga\towner", Lines(await TypeAsync("people", "user list")));
        Assert.Matches(@"\n    [a-z0-9-]{16,}\n", await TypeAsync("people", "reset-password"));
        Assert.Matches(@"\n    \S{20,}\n", await TypeAsync("install", "token add"));
        Assert.Contains("fine", await TypeAsync("install", "doctor"), StringComparison.Ordinal);
        Assert.Matches(@"\n    \S{20,}\n", await TypeAsync("watch", "token add"));
        await SignsInAsync(owner);
        await CountsRequestsAsync();
        await TypeAsync("install", "backup FILE");
        await TypeAsync("backup", "backup club.backup");
        await TypeAsync("export", "export club");
        await _keyboard.StopAsync();

        await TypeAsync("install", "restore FILE");
        await TypeAsync("backup", "restore club.backup");
        Assert.Equal(
            "Maive\towner\nOlga\towner",
            Lines(await _keyboard.TypeAsync("./brewfloor user list --data fresh"))
        );
        await _keyboard.TypeAsync("rm -r fresh");
        await TypeAsync("export", "import club");
        Assert.Equal(
            "Maive\towner\nOlga\towner",
            Lines(await _keyboard.TypeAsync("./brewfloor user list --data fresh"))
        );

        _keyboard.BackupFile = "before-the-upgrade.backup";
        await TypeAsync("install", "backup FILE");
        await StartAsync("install", "./brewfloor start");
        await _keyboard.StopAsync();
        await StartAsync("backup", "BREWFLOOR_BACKUP_FOLDER");
        await _keyboard.StopAsync();

        Assert.Empty(_docs.NotTyped);
    }

    [Fact]
    public void A_command_that_nobody_typed_is_found() =>
        Assert.Equal(
            ["./brewfloor start", "A=b ./brewfloor backup x"],
            DocsCommands.In(["./brewfloor test", "```sh", "./brewfloor start", "ls", "A=b ./brewfloor backup x", "```"])
        );

    public void Dispose() => _keyboard.Dispose();

    private async Task<string> TypeAsync(string page, string words) =>
        await _keyboard.TypeAsync(_docs.Take(page, words));

    private async Task StartAsync(string page, string words) =>
        await _keyboard.TypeAndWaitAsync(_docs.Take(page, words));

    // The printed password lets its owner in, once, to say their own.
    private async Task SignsInAsync(string said)
    {
        var password = said.Split('\n').First(line => line.StartsWith("    ", StringComparison.Ordinal)).Trim();
        var address = _keyboard.Address.GetLeftPart(UriPartial.Authority);
        await using var olga = await Visit.BeginAsync(
            await chromium.NewContextAsync(Screen.Phone.Options(address)),
            Screen.Phone,
            address
        );
        await olga.OpenAsync("/sign-in");
        await olga.TypeAsync("Name", "Olga");
        await olga.TypeAsync("Password", password);
        await olga.PressAsync("Sign in");
        await olga.SeesAsync("Choose your own");
    }

    // Here, and not in a process that several floors share: there another's end takes the counting of requests along.
    private async Task CountsRequestsAsync()
    {
        using var watcher = new HttpClient { BaseAddress = _keyboard.Address };
        var numbers = await watcher.GetStringAsync("/metrics", TestContext.Current.CancellationToken);
        Assert.Contains("http_server_request_duration_seconds", numbers, StringComparison.Ordinal);
    }

    private static string Lines(string said) =>
        string.Join('\n', said.Trim().Split('\n').Order(StringComparer.Ordinal));
}
