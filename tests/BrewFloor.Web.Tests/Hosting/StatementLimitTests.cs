using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Tests.Api;
using Npgsql;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>A question that takes too long ends at the database, and whoever asked is told to come again.</summary>
public sealed class StatementLimitTests(TestServer server)
{
    [Theory]
    [InlineData(null, "5s")]
    [InlineData("-c statement_timeout=7000", "7s")] // as whoever runs it says
    public async Task A_question_of_the_app_may_take_five_seconds_and_one_of_the_owner_as_long_as_it_takes(
        string? saying,
        string limit
    )
    {
        await using var app = new FloorApp(server) { Saying = saying };
        await app.InitializeAsync();
        await using var owner = NpgsqlDataSource.Create(app.OwnerConnection);

        Assert.Equal(limit, await app.AskAsync<string>("SHOW statement_timeout"));
        Assert.Equal("0", await owner.CreateCommand("SHOW statement_timeout").ExecuteScalarAsync(FloorApp.Stop));
    }

    [Fact]
    public async Task Whoever_asked_what_took_too_long_is_told_to_come_again()
    {
        await using var app = new FloorApp(server) { Saying = "-c statement_timeout=200" };
        await app.InitializeAsync();
        await app.TankAsync("K3");
        var (browser, program) = (app.As(Role.Viewer), await app.WithTokenAsync("read"));
        await using var owner = NpgsqlDataSource.Create(app.OwnerConnection);
        await using (var holding = await owner.OpenConnectionAsync(FloorApp.Stop))
        {
            await using var transaction = await holding.BeginTransactionAsync(FloorApp.Stop);
            await using var hold = new NpgsqlCommand("LOCK TABLE tanks IN ACCESS EXCLUSIVE MODE", holding);
            await hold.ExecuteNonQueryAsync(FloorApp.Stop);

            var page = await browser.GetAsync("/tanks/K3", FloorApp.Stop);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, page.StatusCode);
            Assert.NotNull(page.Headers.RetryAfter);
            await (await program.GetAsync("/api/v1/tanks", FloorApp.Stop)).HearAsync(HttpStatusCode.ServiceUnavailable);
        }

        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/tanks/K3", FloorApp.Stop)).StatusCode);
    }
}
