using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Tests.Account;
using Microsoft.AspNetCore.Routing;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>What a page of another site sends in somebody's name.</summary>
public sealed class CrossSiteTests(FloorApp app) : IClassFixture<FloorApp>
{
    private const string Site = "Sec-Fetch-Site";
    private const string Origin = "Origin";

    [Fact]
    public async Task Whatever_changes_something_is_refused_to_other_sites()
    {
        var unsafeCalls = RolesTests
            .CallsOf(app.Get<EndpointDataSource>())
            .Where(call => call.Method is not "GET")
            .ToList();
        var stranger = app.Stranger();

        Assert.True(unsafeCalls.Count > 40, $"Only {unsafeCalls.Count} of them.");
        foreach (var (method, address) in unsafeCalls)
        {
            Assert.Equal(
                (address, HttpStatusCode.Forbidden),
                (address, await AskAsync(stranger, method, address, Site, "cross-site"))
            );
            Assert.NotEqual( // the control
                (address, HttpStatusCode.Forbidden),
                (address, await AskAsync(stranger, method, address, Site, "same-origin"))
            );
        }
    }

    [Theory]
    [InlineData(Site, "same-origin", HttpStatusCode.BadRequest)] // let through, to where its token is missed
    [InlineData(Site, "none", HttpStatusCode.BadRequest)]
    [InlineData(Site, "same-site", HttpStatusCode.Forbidden)]
    [InlineData(Site, "cross-site", HttpStatusCode.Forbidden)]
    [InlineData(Origin, "null", HttpStatusCode.Forbidden)]
    [InlineData(Origin, "https://evil.example", HttpStatusCode.Forbidden)]
    [InlineData(Origin, "http://localhost:1", HttpStatusCode.Forbidden)]
    [InlineData("X-Anything", "at all", HttpStatusCode.BadRequest)]
    public async Task Browsers_say_where_a_form_was_filled_in(string header, string value, HttpStatusCode status) =>
        Assert.Equal(status, await AskAsync(app.As(Role.Helper), "POST", "/sign-out", header, value));

    [Theory]
    [InlineData("http")]
    [InlineData("https")] // a proxy that isn't trusted yet
    public async Task A_page_of_this_host_is_known_over_plain_http_and_behind_any_proxy(string scheme)
    {
        var browser = app.As(Role.Helper);

        Assert.Equal(
            HttpStatusCode.BadRequest,
            await AskAsync(browser, "POST", "/sign-out", Origin, $"{scheme}://{browser.BaseAddress!.Authority}")
        );
    }

    [Fact]
    public async Task Whoever_is_refused_reads_why_and_looking_is_free()
    {
        var browser = app.As(Role.Helper);
        browser.DefaultRequestHeaders.Add(Site, "cross-site");

        using var refused = await browser.PostAsync("/theme", content: null, FloorApp.Stop);

        Assert.Contains("another site", (await refused.PageAsync()).Body.Words(), StringComparison.Ordinal);
        Assert.NotNull(await browser.PageAsync("/more"));
    }

    private static async Task<HttpStatusCode> AskAsync(
        HttpClient browser,
        string method,
        string path,
        string header,
        string value
    )
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path) { Headers = { { header, value } } };
        using var answer = await browser.SendAsync(request, FloorApp.Stop);
        return answer.StatusCode;
    }
}
