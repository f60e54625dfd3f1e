using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>The floor below a path of its host, whether the proxy before it passes the path on or takes it off.</summary>
public sealed class BasePathTests(TestServer server) : IAsyncLifetime
{
    private readonly FloorApp _app = new(server) { Below = "floor" };

    public ValueTask InitializeAsync() => _app.InitializeAsync();

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Theory]
    [InlineData(null, "")]
    [InlineData("", "")]
    [InlineData("/", "")]
    [InlineData("floor", "/floor")]
    [InlineData("/floor/", "/floor")]
    [InlineData("/club/floor-2", "/club/floor-2")]
    public void It_is_a_path_with_or_without_slashes_around_it(string? text, string path) =>
        Assert.Equal(path, BasePath.Parse(text).Value ?? "");

    [Theory]
    [InlineData("https://club.example/floor")]
    [InlineData("/floor?x=1")]
    [InlineData("/../floor")]
    [InlineData("/flo or")]
    [InlineData("/a//b")]
    [InlineData("/a\n/b")]
    public void Anything_else_stops_the_start_with_a_sentence(string text) =>
        Assert.Contains(
            "not a path like /floor",
            Assert.Throws<StartProblemException>(() => BasePath.Parse(text)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("/floor/tanks/K3?at=1#x", "/floor/tanks/K3?at=1#x")]
    [InlineData("/floor/", "/floor/")]
    [InlineData("/floor", "/floor/")]
    [InlineData("/tanks/K3", "/floor/")]
    [InlineData("/floor2/x", "/floor/")]
    [InlineData("/floor/../wiki", "/floor/")]
    [InlineData("/floor/%2e%2e/wiki", "/floor/")]
    [InlineData("/floor/..\\wiki", "/floor/")]
    [InlineData("//evil.example/floor/", "/floor/")]
    [InlineData(null, "/floor/")]
    public void A_form_sends_back_to_a_page_of_the_floor_never_beside_it(string? asked, string sent) =>
        Assert.Equal(sent, LocalPaths.Safe(asked, "/floor"));

    [Theory]
    [InlineData("/floor/more")]
    [InlineData("/more")]
    public async Task The_page_is_the_same_when_the_proxy_takes_the_path_off(string path)
    {
        var page = await _app.As(Role.Viewer).PageAsync(path);

        Assert.Equal("/floor/", page.QuerySelector("base")!.GetAttribute("href"));
        Assert.Equal("/floor/more", page.QuerySelector("input[name=back]")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("/floor", "/floor/sign-in?returnUrl=%2Ffloor%2F")]
    [InlineData("/floor/jobs?x=1", "/floor/sign-in?returnUrl=%2Ffloor%2Fjobs%3Fx%3D1")]
    public async Task Who_is_not_known_is_asked_in_below_it(string path, string to) =>
        Assert.Equal(to, (await _app.Stranger().GetAsync(path, FloorApp.Stop)).Headers.Location!.PathAndQuery);

    [Fact]
    public async Task Cookies_are_kept_for_it_alone()
    {
        using var opened = await _app.Stranger().GetAsync("/floor/sign-in", FloorApp.Stop);

        Assert.All(
            opened.Headers.GetValues("Set-Cookie"),
            cookie => Assert.Contains("path=/floor", cookie, StringComparison.Ordinal)
        );
    }
}
