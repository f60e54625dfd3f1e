using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>Whom the floor believes about who asks, and how cookies travel.</summary>
public sealed class TrustedProxiesTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData(null, 2)]
    [InlineData("", 2)]
    [InlineData("172.18.0.0/16, 10.0.0.7", 4)]
    [InlineData("fd00::/8\n192.168.1.2", 4)]
    public void Addresses_and_networks_are_trusted_beside_this_machine(string? text, int count) =>
        Assert.Equal(count, TrustedProxies.Parse(text).Networks.Count);

    [Theory]
    [InlineData("nginx")]
    [InlineData("10.0.0.0/33")]
    [InlineData("172.18.0.0/16,all")]
    public void Anything_else_stops_the_start_with_a_sentence(string text) =>
        Assert.Contains(
            "neither an address nor a network",
            Assert.Throws<StartProblemException>(() => TrustedProxies.Parse(text)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("::1", true)]
    [InlineData("10.1.2.3", true)]
    [InlineData("172.16.0.1", true)]
    [InlineData("172.32.0.1", false)]
    [InlineData("192.168.0.9", true)]
    [InlineData("192.169.0.9", false)]
    [InlineData("100.64.0.1", true)]
    [InlineData("100.128.0.1", false)]
    [InlineData("fd12::1", true)]
    [InlineData("fe80::1", true)]
    [InlineData("2001:db8::1", false)]
    [InlineData("::ffff:10.0.0.1", true)]
    [InlineData("::ffff:203.0.113.5", false)]
    [InlineData("203.0.113.5", false)]
    public void The_house_is_this_machine_and_private_networks(string address, bool isPrivate) =>
        Assert.Equal(isPrivate, PlainHttp.IsPrivate(IPAddress.Parse(address)));

    [Theory]
    [InlineData("192.168.1.30", "http", HttpStatusCode.Redirect, false)]
    [InlineData("203.0.113.5", "https", HttpStatusCode.Redirect, true)]
    [InlineData("203.0.113.5", "http", HttpStatusCode.Forbidden, false)]
    public async Task Who_signs_in_from_where_and_over_what(
        string from,
        string scheme,
        HttpStatusCode status,
        bool isSecure
    )
    {
        var browser = Behind(from, scheme);

        using var opened = await browser.GetAsync("/sign-in", FloorApp.Stop);
        foreach (var cookie in opened.Headers.GetValues("Set-Cookie")) // one for TLS alone isn't kept by this browser
        {
            browser.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
        }

        using var answer = await browser.SendFormAsync(
            "/sign-in",
            await opened.PageAsync(),
            "sign-in",
            ("Input.Name", nameof(Role.Helper)),
            ("Input.Password", FloorApp.Password)
        );

        Assert.Equal(status, answer.StatusCode);
        var cookies = answer.Headers.TryGetValues("Set-Cookie", out var set) ? string.Join('\n', set) : "";
        Assert.Equal(status is HttpStatusCode.Redirect, cookies.Contains("brewfloor=", StringComparison.Ordinal));
        Assert.Equal(isSecure, cookies.Contains("secure", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task The_sign_in_says_what_plain_http_means()
    {
        var within = await Behind("192.168.1.30", "http").PageAsync("/sign-in");
        var outside = await Behind("203.0.113.5", "http").PageAsync("/sign-in");
        var safe = await Behind("203.0.113.5", "https").PageAsync("/sign-in");

        Assert.Contains("can read along", within.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Nobody signs in like this", outside.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("HTTP", safe.Body!.TextContent, StringComparison.Ordinal);
    }

    // As a proxy on this machine forwards it.
    private HttpClient Behind(string from, string scheme)
    {
        var browser = app.Stranger();
        browser.DefaultRequestHeaders.Add("X-Forwarded-For", from);
        browser.DefaultRequestHeaders.Add("X-Forwarded-Proto", scheme);
        return browser;
    }
}
