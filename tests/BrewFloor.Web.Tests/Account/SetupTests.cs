using System.Net;
using AngleSharp.Html.Dom;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;
using Microsoft.Extensions.Time.Testing;

namespace BrewFloor.Web.Tests.Account;

public sealed class SetupTests(TestServer server)
{
    [Fact]
    public async Task Of_a_hundred_who_claim_a_new_floor_at_once_one_becomes_its_owner()
    {
        await using var app = new FloorApp(server);
        await app.StartEmptyAsync();
        var page = await app.Stranger().PageAsync("/setup");
        Assert.NotNull(page.QuerySelector("#token"));

        // From a hundred places: from one, the twenty-first is told to wait.
        var code = app.Get<SetupToken>().Text;
        var ready = await Task.WhenAll(Enumerable.Range(1, 100).Select(n => OpenAsync(app.Stranger($"127.0.1.{n}"))));
        var answers = await Task.WhenAll(ready.Select((at, n) => ClaimAsync(at.Browser, at.Page, $"Owner {n}", code)));

        Assert.Single(answers, answer => answer.StatusCode is HttpStatusCode.Found);
        Assert.All(
            answers.Where(answer => answer.StatusCode is not HttpStatusCode.Found),
            // Told that it is done; or, where a hundred at once are too many for the machine, to come again.
            answer =>
                Assert.Contains(
                    answer.StatusCode,
                    (HttpStatusCode[])[HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable]
                )
        );
        Assert.Equal(1, await app.AskAsync<long>("SELECT count(*) FROM people"));
        Assert.Equal("owner", await app.AskAsync<string>("SELECT role FROM people"));
    }

    [Fact]
    public async Task A_floor_without_an_owner_leads_to_its_setup_and_a_wrong_code_claims_nothing()
    {
        await using var app = new FloorApp(server);
        await app.StartEmptyAsync();
        var browser = app.Stranger();

        Assert.Equal("/setup", (await browser.GetAsync("/", FloorApp.Stop)).Headers.Location?.OriginalString);
        var (_, page) = await OpenAsync(browser);
        var wrong = await ClaimAsync(browser, page, "Ann", "0123456789abcdef0123456789abcdef");

        Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);
        Assert.NotEmpty((await wrong.PageAsync()).QuerySelector("[role=alert]").Words());
        Assert.Equal(0, await app.AskAsync<long>("SELECT count(*) FROM people"));

        var right = await ClaimAsync(browser, page, "Ann", app.Get<SetupToken>().Text);
        Assert.Equal(HttpStatusCode.Found, right.StatusCode);
    }

    [Fact]
    public void The_code_is_good_for_fifteen_minutes()
    {
        var clock = new FakeTimeProvider();
        var code = new SetupToken(clock);

        clock.Advance(SetupToken.Lasts - TimeSpan.FromSeconds(1));
        Assert.True(code.Is(code.Text.ToUpperInvariant() + " "));
        Assert.False(code.Is(code.Text[1..]));
        Assert.False(code.Is(null));

        clock.Advance(TimeSpan.FromSeconds(1));
        Assert.False(code.Is(code.Text));
    }

    private static async Task<(HttpClient Browser, IHtmlDocument Page)> OpenAsync(HttpClient browser) =>
        (browser, await browser.PageAsync("/setup"));

    private static Task<HttpResponseMessage> ClaimAsync(
        HttpClient browser,
        IHtmlDocument page,
        string name,
        string code
    ) =>
        browser.SendFormAsync(
            "/setup",
            page,
            "setup",
            ("Input.Token", code),
            ("Input.Name", name),
            ("Input.Password", FloorApp.Password),
            ("Input.Site", "The shed"),
            ("Input.Zone", "Europe/Berlin")
        );
}
