using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Hosting;
using Microsoft.Extensions.DependencyInjection;
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
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
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

    [Fact]
    public async Task Two_instances_with_one_secret_know_each_others_people_and_with_another_secret_they_sign_in_anew()
    {
        await using var first = new FloorApp(server);
        await first.InitializeAsync();
        var cookies = first.CookiesOf(first.Person(Role.Helper));
        await using var beside = new FloorApp(server) { Before = first };
        await beside.StartEmptyAsync();
        await using var other = new FloorApp(server)
        {
            Before = first,
            Instead = services =>
                services.AddSingleton(
                    FloorSecret.Of(
                        "",
                        name => name is FloorSecret.Variable ? new string('x', FloorSecret.Shortest) : null
                    )
                ),
        };
        await other.StartEmptyAsync();

        using var known = await beside.With(cookies).GetAsync("/jobs", FloorApp.Stop);
        using var unknown = await other.With(cookies).GetAsync("/jobs", FloorApp.Stop);
        using var anew = await other.As(first.Person(Role.Helper)).GetAsync("/jobs", FloorApp.Stop);

        Assert.Equal(HttpStatusCode.OK, known.StatusCode);
        Assert.StartsWith("/sign-in", unknown.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, anew.StatusCode);
    }

    [Fact]
    public async Task Nothing_of_a_key_can_be_read_in_the_database()
    {
        await using var floor = new FloorApp(server);
        await floor.InitializeAsync();
        await floor.Stranger().GetStringAsync("/sign-in", FloorApp.Stop); // its form needs a key

        var key = await floor.AskAsync<string>("SELECT xml FROM data_protection_keys LIMIT 1");

        Assert.Contains("<sealed", key, StringComparison.Ordinal);
        Assert.DoesNotContain("masterKey", key, StringComparison.Ordinal);
    }
}
