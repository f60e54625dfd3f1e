using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>Somebody holds a tank for longer than others wait: they are told so, and keep what they typed.</summary>
public sealed class BusyTests(TestServer server) : IAsyncLifetime
{
    private const string Typed = "The jacket drips & hisses";

    private readonly FloorApp _app = new(server)
    {
        Instead = services =>
            services.AddSingleton(provider => new FloorLog(
                provider.GetRequiredService<NpgsqlDataSource>(),
                provider.GetRequiredService<RulesOnHand>()
            )
            {
                Locks = new() { Patience = TimeSpan.FromMilliseconds(200) },
            }),
    };

    private Guid _tank;

    public async ValueTask InitializeAsync()
    {
        await _app.InitializeAsync();
        _tank = (await _app.TankAsync("K3")).Id;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task A_program_is_told_to_send_it_again_and_then_it_is_stored()
    {
        var gauge = await _app.WithTokenAsync("log");
        var note = Talk.Note("K3", Typed);
        HttpResponseMessage answer;
        await using (await Holder.OfTankAsync(_app.Get<NpgsqlDataSource>(), _tank))
        {
            answer = await gauge.SendAsync(note);
        }

        var problem = await answer.HearAsync(HttpStatusCode.ServiceUnavailable);
        Assert.Contains("Nothing was logged", problem.Text("title"), StringComparison.Ordinal);
        Assert.NotNull(answer.Headers.RetryAfter);
        Assert.Equal(0, await _app.EntriesAsync());
        await (await gauge.SendAsync(note)).HearAsync(HttpStatusCode.OK);
    }

    [Fact]
    public async Task A_form_is_kept_and_sent_again_as_it_was()
    {
        var browser = _app.As(Role.Helper);
        HttpResponseMessage answer;
        await using (await Holder.OfTankAsync(_app.Get<NpgsqlDataSource>(), _tank))
        {
            answer = await browser.SendFormAsync("/tanks/K3/log/noted", "entry", ("note", Typed));
        }

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        var page = await answer.PageAsync();
        Assert.Contains("Nothing was logged", page.QuerySelector("main").Words(), StringComparison.Ordinal);
        Assert.Contains(Typed, page.QuerySelector("dl").Words(), StringComparison.Ordinal);
        Assert.True(_app.Get<Readiness>().IsReady); // nobody else is kept from the floor

        var again = await browser.SendFormAsync("/tanks/K3/log/noted", page, "entry");
        Assert.Equal(HttpStatusCode.Found, again.StatusCode);
        Assert.Equal(Typed, await _app.AskAsync<string>("SELECT note FROM entries"));
    }
}
