using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.EndToEnd.Tests.Shell;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Hosting;

/// <summary>A floor below a path of its host, behind nginx, where nothing else answers: every way on stays below it.</summary>
public sealed class BasePathTests(TestServer server, Chromium chromium) : IAsyncLifetime
{
    private const string Below = "/club/floor";

    private readonly FullFloor _floor = new(server, chromium) { App = new(server, chromium) { Below = Below } };
    private Nginx _nginx = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Root => $"{_nginx.Address}{Below}/";

    public async ValueTask InitializeAsync()
    {
        await _floor.InitializeAsync();
        _nginx = await Nginx.BelowAsync(Below, Stop, _floor.App.Address);
    }

    public async ValueTask DisposeAsync()
    {
        await _nginx.DisposeAsync();
        await _floor.DisposeAsync();
    }

    [Fact]
    public async Task No_page_leads_elsewhere()
    {
        await using var olga = await _floor.App.StrangerAtAsync(_nginx.Address + Below, Screen.Desk);
        var asked = Asked(olga);
        await olga.OpenAsync("/sign-in");
        var leading = (await LeadingAsync(olga)).ToList();
        await olga.SignInAsync(FloorApp.Owner);
        foreach (var path in Pages.OneOfEach(_floor))
        {
            await olga.OpenAsync(path);
            leading.AddRange(await LeadingAsync(olga));
        }

        Assert.True(leading.Count > 400, $"Only {leading.Count} links on all pages.");
        Assert.Empty(Elsewhere(leading));
        Assert.Empty(Elsewhere(asked));
        Assert.Contains($"{Root}live", asked);
    }

    [Fact]
    public async Task Whatever_is_pressed_stays_below_it()
    {
        await using var hanna = await _floor.App.StrangerAtAsync(_nginx.Address + Below, Screen.Phone);
        var asked = Asked(hanna);
        await hanna.OpenAsync("/tanks/P1");
        await hanna.TypeAsync("Name", FloorApp.Helper);
        await hanna.TypeAsync("Password", FloorApp.Password);
        await hanna.PressAsync("Sign in");
        Assert.Equal($"{Root}tanks/P1", hanna.Page.Url); // as was asked for
        Assert.All(
            await hanna.Page.Context.CookiesAsync(),
            cookie => Assert.StartsWith(Below, cookie.Path, StringComparison.Ordinal)
        );

        await hanna.PressAsync(hanna.Page.Locator("header button.theme"));
        Assert.Equal($"{Root}tanks/P1", hanna.Page.Url);
        await hanna.OpenAsync("/tanks/P1/log/noted");
        await hanna.TypeAsync("Note", "The path is long");
        await hanna.PressAsync("Note");
        await hanna.SeesAsync("On the server");
        await hanna.OpenAsync("/find?q=F1");
        Assert.Equal($"{Root}tanks/F1", hanna.Page.Url);
        await hanna.OpenAsync("/nothing-here");
        await hanna.PressAsync("To the floor");
        await hanna.OpenAsync("/more");
        await hanna.PressAsync("Sign out");

        Assert.Equal($"{Root}sign-in", hanna.Page.Url);
        Assert.Empty(Elsewhere(asked));
    }

    [Fact]
    public async Task A_link_that_leads_elsewhere_is_found()
    {
        await using var vera = await _floor.App.StrangerAtAsync(_nginx.Address + Below, Screen.Phone);
        await vera.OpenAsync("/sign-in");
        await vera.Page.EvaluateAsync(
            """() => document.body.insertAdjacentHTML('beforeend', '<a href="/jobs">x</a><form action="/theme"><input name="back" value="/"></form>')"""
        );

        Assert.Equal(3, Elsewhere(await LeadingAsync(vera)).Count());
    }

    private IEnumerable<string> Elsewhere(IEnumerable<string> addresses) =>
        addresses.Where(address =>
            address.StartsWith(_nginx.Address, StringComparison.Ordinal)
            && !address.StartsWith(Root, StringComparison.Ordinal)
        );

    private static List<string> Asked(Visit visit)
    {
        var asked = new List<string>();
        visit.Page.Request += (_, request) => asked.Add(request.Url);
        return asked;
    }

    // Wherever a page may lead, as the browser understands it.
    private static Task<string[]> LeadingAsync(Visit visit) =>
        visit.Page.EvaluateAsync<string[]>(
            """
            () => ['href', 'action', 'formaction', 'src', 'data-passkey'].flatMap(name =>
                [...document.querySelectorAll(`[${name}]`)].map(one => new URL(one.getAttribute(name), document.baseURI).href))
              .concat([...document.querySelectorAll('[name=back], [name=returnUrl]')].map(one => new URL(one.value, location.origin).href))
            """
        );
}
