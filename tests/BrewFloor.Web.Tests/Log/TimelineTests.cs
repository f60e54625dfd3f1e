using System.Net;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Tests.Api;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Log;

public sealed class TimelineTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task A_line_says_from_where_to_where_of_what_and_into_what()
    {
        var (from, to, batch) = (await app.TankAsync("LA"), await app.TankAsync("LB"), Guid.CreateVersion7());
        await app.AppendAsync(
            Fill(from.Id, batch, at: Ago(9)),
            new Racked(from.Id, to.Id, batch, Litres(880), Litres(20)) { Id = NewId(), At = Ago(6) },
            new Washed(from.Id, Agent.Alkaline, Way.SprayBall)
            {
                Id = NewId(),
                At = Ago(5),
                Concentration = "1.5 %",
                Temperature = UnitsNet.Temperature.FromDegreesCelsius(55),
                Minutes = UnitsNet.Duration.FromMinutes(25),
            },
            new Packaged(to.Id, batch, Litres(300), [new(ContainerKind.Keg, Litres(30), 10)])
            {
                Id = NewId(),
                At = Ago(3),
            }
        );

        var (there, gone) = (await LinesAsync("LA"), await LinesAsync("LB"));

        Assert.Contains("Filled Harvest Ale, 900 L", there);
        Assert.Contains("Racked 880 L from LA to LB", there);
        Assert.Contains("Racked 880 L from LA to LB", gone);
        Assert.Contains("Washed alkaline cleaner, spray ball, 1.5 %, 55.0 °C, 25 min", there);
        Assert.Contains("Packaged 300 L, 10 × 30 L keg", gone);
    }

    private async Task<string[]> LinesAsync(string code)
    {
        var page = await app.As(Role.Viewer).PageAsync($"/tanks/{code}");
        return
        [
            .. page.QuerySelectorAll(".timeline .what").Select(line => line.TextContent.Trim().Replace('\u00a0', ' ')),
        ];
    }

    [Theory]
    [InlineData(10, "Sent by a clock 10")]
    [InlineData(-45, "Sent by a clock 45")]
    [InlineData(1, null)] // nobody minds a minute
    public async Task A_clock_that_is_far_off_is_said_on_the_line_it_dated(int minutes, string? said)
    {
        var code = $"S{Math.Abs(minutes)}";
        await app.TankAsync(code);
        var sent = TimeProvider.System.GetUtcNow().AddMinutes(minutes);
        var note = Talk.Note(code, "The jacket drips");
        note["at"] = sent.AddMinutes(-5);
        note["sent_at"] = sent;
        var phone = await app.WithTokenAsync("log");

        await (await phone.SendAsync(note)).HearAsync(HttpStatusCode.OK);

        using var browser = app.As(Role.Viewer);
        var page = await browser.GetStringAsync($"/tanks/{code}", FloorApp.Stop);
        Assert.Contains("The jacket drips", page, StringComparison.Ordinal);
        Assert.Equal(said is not null, page.Contains(said ?? "Sent by a clock", StringComparison.Ordinal));
    }
}
