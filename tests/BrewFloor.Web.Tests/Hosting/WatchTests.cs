using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>What whoever runs the floor can watch: numbers, readiness, and the log of the process.</summary>
public sealed partial class WatchTests(FloorApp app, TestServer server) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Numbers_are_for_this_machine_and_for_tokens_that_may_read()
    {
        var reader = await app.WithTokenAsync("read");
        var writer = await app.WithTokenAsync("log");

        Assert.Equal(HttpStatusCode.OK, await AskAsync(app.Stranger(), null));
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(app.Stranger(), "203.0.113.9"));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(reader, "203.0.113.9"));
        Assert.Equal(HttpStatusCode.Forbidden, await AskAsync(writer, "203.0.113.9"));
        Assert.Equal(HttpStatusCode.Forbidden, await AskAsync(app.As(Role.Owner), "203.0.113.9"));
    }

    [Fact]
    public async Task Entries_are_counted_by_kind_and_what_pages_count_by_themselves_stays_out()
    {
        var tank = await app.TankAsync("W1");
        await app.AppendAsync(new Domain.Log.Noted(Domain.Log.Subject.Tank(tank.Id)) { Note = "Watched" });

        var page = await app.Stranger().GetStringAsync("/metrics", FloorApp.Stop);

        Assert.Matches("""brewfloor_log_entries_total\{[^}]*kind="noted"[^}]*\} [1-9]""", page);
        Assert.Matches("""brewfloor_log_requests_total\{[^}]*outcome="stored"[^}]*\} [1-9]""", page);
        Assert.Contains("db_client_connection_count", page, StringComparison.Ordinal);
        Assert.DoesNotContain("components", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_reference_on_the_page_of_an_error_finds_its_line_in_the_log_of_the_process()
    {
        await using var broken = new FloorApp(server);
        await broken.InitializeAsync();
        var tank = await broken.TankAsync("K3");
        var viewer = broken.As(Role.Viewer);
        await using (var owner = NpgsqlDataSource.Create(broken.OwnerConnection))
        {
            await using var command = owner.CreateCommand("DROP TABLE states CASCADE");
            await command.ExecuteNonQueryAsync(FloorApp.Stop);
        }

        using var answer = await viewer.GetAsync($"/tanks/{tank.Code}", FloorApp.Stop);
        var reference = Reference().Match(await answer.Content.ReadAsStringAsync(FloorApp.Stop)).Value;

        Assert.NotEmpty(reference);
        var file = Assert.Single(Directory.GetFiles(broken.Get<StartOptions>().DataFolder, "app.log*.jsonl"));
        await using var open = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var lines = new StreamReader(open);
        Assert.Contains(
            (await lines.ReadToEndAsync(FloorApp.Stop))
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => JsonNode.Parse(line)!),
            line =>
                string.Equals(line["RequestId"]?.GetValue<string>(), reference, StringComparison.Ordinal)
                && line["@x"] is not null
        );
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task Readiness_says_what_is_waited_for()
    {
        Assert.Equal("ready", await app.Stranger().GetStringAsync("/health/ready", FloorApp.Stop));

        using var paused = app.Get<Readiness>().Pause();
        using var answer = await app.Stranger().GetAsync("/health/ready", FloorApp.Stop);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Equal("not ready: a backup is being restored", await answer.Content.ReadAsStringAsync(FloorApp.Stop));
    }

    private static async Task<HttpStatusCode> AskAsync(HttpClient browser, string? through)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/metrics");
        if (through is not null)
        {
            request.Headers.Add("X-Forwarded-For", through);
        }

        using var answer = await browser.SendAsync(request, FloorApp.Stop);
        return answer.StatusCode;
    }

    [GeneratedRegex("[0-9A-Z]{13}:[0-9A-F]{8}", RegexOptions.NonBacktracking)]
    private static partial Regex Reference();
}
