using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Tests.Api;

namespace BrewFloor.Web.Tests.Hosting;

public sealed class SecurityHeadersTests(FloorApp app, TestServer server) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData("GET", "/sign-in", HttpStatusCode.OK)]
    [InlineData("GET", "/", HttpStatusCode.Found)]
    [InlineData("GET", "/nothing", HttpStatusCode.NotFound)]
    [InlineData("GET", "/health/live", HttpStatusCode.OK)]
    [InlineData("GET", "/openapi/v1.json", HttpStatusCode.OK)]
    [InlineData("GET", "/api/v1/tanks", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/api/v1/nothing", HttpStatusCode.NotFound)]
    [InlineData("PUT", "/api/v1/tanks", HttpStatusCode.MethodNotAllowed)]
    [InlineData("POST", "/sign-in", HttpStatusCode.BadRequest)] // without its token
    public async Task Every_kind_of_answer_carries_them(string method, string path, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var answer = await app.Stranger().SendAsync(request, FloorApp.Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.Empty(Missing(answer));
    }

    [Fact]
    public async Task A_form_without_its_token_is_answered_with_a_page()
    {
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("theme", "dark")]);
        using var answer = await app.Stranger().PostAsync("/theme", form, FloorApp.Stop);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
        Assert.Empty(Missing(answer));
    }

    [Fact]
    public async Task The_stylesheet_carries_them_too()
    {
        using var answer = await app.Stranger().GetAsync("/tokens.css", FloorApp.Stop);

        Assert.Empty(Missing(answer));
    }

    [Fact]
    public async Task What_fails_says_so_without_its_insides_and_still_carries_them()
    {
        await using var broken = new FloorApp(server);
        await broken.InitializeAsync();
        var tank = await broken.TankAsync("K3");
        await BreakAsync(broken);

        var page = await broken.As(Role.Viewer).GetAsync($"/tanks/{tank.Code}", FloorApp.Stop);
        var program = await (await broken.WithTokenAsync("read")).GetAsync("/api/v1/log", FloorApp.Stop);

        Assert.Equal(HttpStatusCode.InternalServerError, page.StatusCode);
        Assert.Empty(Missing(page));
        Assert.DoesNotContain(
            "Exception",
            await page.Content.ReadAsStringAsync(FloorApp.Stop),
            StringComparison.Ordinal
        );
        var problem = await program.HearAsync(HttpStatusCode.InternalServerError);
        Assert.Empty(Missing(program));
        Assert.DoesNotContain("Exception", problem.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_check_can_fail()
    {
        using var bare = new HttpResponseMessage();

        Assert.Equal(6, Missing(bare).Count());
    }

    [Theory]
    [InlineData("/tanks/K3", "/tanks/K3")]
    [InlineData("/tanks/K3?at=1#x", "/tanks/K3?at=1#x")]
    [InlineData("/", "/")]
    [InlineData("", "/")]
    [InlineData(null, "/")]
    [InlineData("tanks", "/")]
    [InlineData("//evil.example", "/")]
    [InlineData("/\\evil.example", "/")]
    [InlineData("\\\\evil.example", "/")]
    [InlineData("https://evil.example", "/")]
    [InlineData("javascript:alert(1)", "/")]
    [InlineData("/\t/evil.example", "/")] // a browser drops the tab
    [InlineData("/\n/evil.example", "/")]
    [InlineData("/tanks\r\nSet-Cookie: x", "/")]
    public void A_form_sends_back_to_a_page_of_this_house(string? asked, string sent) =>
        Assert.Equal(sent, LocalPaths.Safe(asked));

    private static IEnumerable<string> Missing(HttpResponseMessage answer)
    {
        (string Name, string Has)[] wanted =
        [
            ("Content-Security-Policy", "frame-ancestors 'none'"),
            ("X-Content-Type-Options", "nosniff"),
            ("Referrer-Policy", "same-origin"),
            ("Permissions-Policy", "camera=()"),
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Cross-Origin-Resource-Policy", "same-origin"),
        ];
        return wanted
            .Where(header =>
                !answer.Headers.TryGetValues(header.Name, out var values)
                || !values.Any(value => value.Contains(header.Has, StringComparison.Ordinal))
            )
            .Select(header => header.Name);
    }

    // A table that both need is gone, as after a restore that went wrong.
    private static async Task BreakAsync(FloorApp broken)
    {
        await using var owner = Npgsql.NpgsqlDataSource.Create(broken.OwnerConnection);
        await using var command = owner.CreateCommand("ALTER TABLE seen_afterwards RENAME TO gone");
        await command.ExecuteNonQueryAsync(FloorApp.Stop);
    }
}
