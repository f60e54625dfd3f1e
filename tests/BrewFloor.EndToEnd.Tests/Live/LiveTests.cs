using System.Diagnostics;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Live;

/// <summary>Two people, two phones: what one logs, the other sees without doing anything.</summary>
[Collection(nameof(Alone))]
public sealed class LiveTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private const int Times = 5;
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(1);

    [Theory]
    [InlineData("")]
    [InlineData("tanks")]
    public async Task What_is_logged_elsewhere_stands_on_an_open_page_within_a_second(string page)
    {
        var tank = await TankAsync();
        await using var vera = await floor.VisitAsync(FloorApp.Viewer, Screen.Phone);
        await FollowsAsync(vera, page is "" ? "/" : $"/tanks/{tank.Code}");
        var waits = new List<TimeSpan>();
        for (var i = 0; i < Times; i++)
        {
            await floor.LogAsync(Temperature(tank, 11.1 + i));
            var watch = Stopwatch.StartNew(); // committed
            await vera
                .Main.GetByText($"{(11.1 + i).ToString(System.Globalization.CultureInfo.InvariantCulture)} °C")
                .First.WaitForAsync();
            waits.Add(watch.Elapsed);
        }

        waits.Sort();
        TestContext.Current.SendDiagnosticMessage("{0}", string.Join(", ", waits.Select(w => w.TotalMilliseconds)));
        Assert.True(waits[Times / 2] < Soon, $"The median of {string.Join(", ", waits)} is too long.");
    }

    [Fact]
    public async Task After_the_connection_broke_a_page_takes_it_up_again_and_loads_once()
    {
        var tank = await TankAsync();
        await using var vera = await floor.VisitAsync(FloorApp.Viewer, Screen.Phone);
        using var wire = new Wire(floor.Address);
        await FollowsAsync(vera, wire.Address + "/");
        await floor.LogAsync(Temperature(tank, 21.1));
        await vera.Main.GetByText("21.1 °C").WaitForAsync();
        var loads = LoadsOf(vera, "/");

        vera.Forgive("net::ERR_");
        wire.Cut();
        await floor.LogAsync(Temperature(tank, 22.2));
        await floor.LogAsync(Temperature(tank, 23.3));
        wire.Mend();

        await vera.Main.GetByText("23.3 °C").WaitForAsync();
        await floor.LogAsync(Temperature(tank, 24.4)); // whatever else was under way has come by then
        await vera.Main.GetByText("24.4 °C").WaitForAsync();
        Assert.Equal(2, loads.Count);
    }

    [Fact]
    public async Task A_page_that_somebody_types_in_stays_as_it_is()
    {
        var tank = await TankAsync();
        await using var vera = await floor.VisitAsync(FloorApp.Viewer, Screen.Phone);
        await vera.Page.Clock.InstallAsync(); // so that whatever waits a little can be made to happen
        await FollowsAsync(vera, $"/tanks/{tank.Code}");
        var loads = LoadsOf(vera, $"/tanks/{tank.Code}");

        await HearsAsync(vera, Temperature(tank, 14.1));
        await vera.Main.GetByText("14.1 °C").First.WaitForAsync();
        Assert.Single(loads);

        await vera.TypeAsync("As it was on", "2026-03-14T14:02");
        await HearsAsync(vera, Temperature(tank, 15.1));

        Assert.Single(loads);
        Assert.Equal("2026-03-14T14:02", await vera.TypedAsync("As it was on"));
    }

    [Fact]
    public async Task A_form_is_never_loaded_anew()
    {
        var tank = await TankAsync();
        await using var bert = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone);
        await bert.Page.Clock.InstallAsync();
        var path = $"/tanks/{tank.Code}/log/noted";
        await FollowsAsync(bert, path);
        var loads = LoadsOf(bert, path);
        await bert.TypeAsync("Note", "Half a sentence");

        await HearsAsync(bert, Temperature(tank, 14.1));

        Assert.DoesNotContain(loads, method => method is "GET");
        Assert.Equal("Half a sentence", await bert.TypedAsync("Note"));
    }

    private async Task<Tank> TankAsync()
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        var batch = Guid.CreateVersion7();
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Sanitized, 31), SomeEntries.Fill(tank, batch, 30));
        return tank;
    }

    private static TemperatureTaken Temperature(Tank tank, double celsius) =>
        new(tank.Id, SomeTanks.Celsius(celsius)) { At = default };

    private static async Task FollowsAsync(Visit visit, string path) =>
        await visit.Page.RunAndWaitForResponseAsync(
            () => visit.OpenAsync(path),
            reply => reply.Url.EndsWith("/live", StringComparison.Ordinal)
        );

    // How often the page itself was asked for again, and how.
    private static List<string> LoadsOf(Visit visit, string path)
    {
        var loads = new List<string>();
        visit.Page.Request += (_, asked) =>
        {
            if (
                asked.ResourceType is "fetch"
                && string.Equals(new Uri(asked.Url).AbsolutePath, path, StringComparison.Ordinal)
            )
            {
                loads.Add(asked.Method);
            }
        };
        return loads;
    }

    // Told to this very page, and all that it wanted to do about it a little later is done.
    private async Task HearsAsync(Visit visit, LogEntry entry)
    {
        var live = await visit.Page.EvaluateHandleAsync(
            """
            () => {
              const events = new EventSource('/live');
              const heard = new Promise(done => events.addEventListener('entry', done));
              return new Promise(ready => { events.onopen = () => ready({ heard }); });
            }
            """
        );
        await floor.LogAsync(entry);
        await live.EvaluateAsync("live => live.heard.then(() => true)");
        await visit.Page.Clock.RunForAsync(1000);
    }
}
