using BrewFloor.Domain.People;
using Microsoft.Extensions.Hosting;
using TestServer = BrewFloor.Store.Tests.Postgres.TestServer;

namespace BrewFloor.Web.Tests.Account;

public sealed class RestartTests(TestServer server)
{
    [Fact]
    public async Task A_restart_signs_nobody_out_and_a_form_that_was_open_is_stored_once()
    {
        await using var first = new FloorApp(server);
        await first.InitializeAsync();
        await first.TankAsync("K9");
        var cookies = first.CookiesOf(first.Person(Role.Helper));
        const string path = "/tanks/K9/log/noted";
        var open = await first.With(cookies).PageAsync(path);

        first.Get<IHostApplicationLifetime>().StopApplication();
        await using var second = new FloorApp(server) { Before = first };
        await second.StartEmptyAsync();
        var browser = second.With(cookies);
        for (var press = 0; press < 2; press++)
        {
            var answer = await browser.SendFormAsync(path, open, "entry", ("note", "The jacket drips"));
            Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Contains("/tanks/K9?logged=", answer.Headers.Location!.OriginalString, StringComparison.Ordinal);
        }

        Assert.Equal(1, await second.EntriesAsync());
    }

    [Fact]
    public async Task Without_the_keys_of_the_floor_the_same_cookie_lets_nobody_in()
    {
        await using var first = new FloorApp(server);
        await first.InitializeAsync();
        var cookies = first.CookiesOf(first.Person(Role.Helper));
        await using var stranger = new FloorApp(server);
        await stranger.InitializeAsync();

        var answer = await stranger.With(cookies).GetAsync("/jobs", FloorApp.Stop);

        Assert.StartsWith("/sign-in", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }
}
