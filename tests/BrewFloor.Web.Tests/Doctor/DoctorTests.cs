using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Tests.Hosting;

namespace BrewFloor.Web.Tests.Doctor;

/// <summary>The owner reads how everything is, on a page and on the console.</summary>
public sealed class DoctorTests(FloorApp app, TestServer server) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task The_owner_reads_a_word_and_a_sentence_about_each_thing()
    {
        var rows = (await app.As(Role.Owner).PageAsync("/doctor")).QuerySelectorAll("dl.facts > div");

        Assert.Equal(
            ["Database", "Clock", "Disk", "Time zones", "Proxy", "Backup"],
            rows.Select(row => row.QuerySelector("dt").Words())
        );
        Assert.All(rows, row => Assert.Contains(row.QuerySelector("b").Words(), (string[])["fine", "look", "bad"]));
        Assert.StartsWith("fine: PostgreSQL", rows[0].QuerySelector("dd").Words(), StringComparison.Ordinal);
        Assert.StartsWith("look: Not backed up yet", rows[^1].QuerySelector("dd").Words(), StringComparison.Ordinal);
        Assert.NotNull((await app.As(Role.Owner).PageAsync("/more")).QuerySelector("a[href='doctor']"));
        Assert.Null((await app.As(Role.Brewer).PageAsync("/more")).QuerySelector("a[href='doctor']"));
    }

    [Fact]
    public async Task A_request_through_a_proxy_is_seen()
    {
        using var browser = app.As(Role.Owner);
        browser.DefaultRequestHeaders.Add("X-Forwarded-For", "203.0.113.9");

        var proxy = (await browser.PageAsync("/doctor")).QuerySelectorAll("dl.facts > div")[4];

        Assert.StartsWith(
            "look: Requests come through a proxy",
            proxy.QuerySelector("dd").Words(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task On_the_console_what_is_bad_ends_it_with_code_1()
    {
        var (sound, behind) = (
            await server.NewDatabaseAsync(FloorApp.Stop),
            await server.EmptyDatabaseAsync(FloorApp.Stop)
        );

        var (code, said) = await RunAsync(sound.Owner);
        Assert.True(code == 0 && said.StartsWith("fine  Database: PostgreSQL", StringComparison.Ordinal), said);
        (code, said) = await RunAsync(behind.Owner);
        Assert.True(code == 1 && said.Contains("are pending: start BrewFloor", StringComparison.Ordinal), said);
        (code, said) = await RunAsync("Host=/nowhere;Username=nobody");
        Assert.True(code == 1 && said.StartsWith("bad   Database: ", StringComparison.Ordinal), said);
    }

    private static Task<(int Code, string Said)> RunAsync(string database) =>
        AppCommand.RunAsync(
            new Dictionary<string, string>(StringComparer.Ordinal) { ["ConnectionStrings__BrewFloor"] = database },
            "doctor"
        );
}
