using BrewFloor.EndToEnd.Tests.House;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Chromium))]
[assembly: Xunit.v3.Parallelization(MaxThreads = 2)] // each of them keeps a browser, a server and an app busy

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>One browser for the run: the system's own Chromium, started by the first test that wants it.</summary>
public sealed class Chromium : IAsyncLifetime
{
    // Without windows: the one with them opens pages of its own for each new visitor, and those keep the cores busy.
    private const string Program = "/usr/bin/chromium-headless-shell";

    private static readonly string[] Flags =
    [
        "--no-sandbox", // tests may run as root, where there is none
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];

    private readonly SemaphoreSlim _first = new(1, 1);
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async Task<IBrowserContext> NewContextAsync(BrowserNewContextOptions options) =>
        await (await BrowserAsync()).NewContextAsync(options);

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        _first.Dispose();
    }

    private async Task<IBrowser> BrowserAsync()
    {
        await _first.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            _playwright ??= await Playwright.CreateAsync();
            return _browser ??= await _playwright.Chromium.LaunchAsync(
                new() { ExecutablePath = Program, Args = Flags }
            );
        }
        finally
        {
            _first.Release();
        }
    }
}
