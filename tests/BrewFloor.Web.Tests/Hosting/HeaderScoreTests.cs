using System.Globalization;
using AngleSharp.Html.Parser;
using BrewFloor.Domain.People;
using BrewFloor.Web.Tests.Account;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>
/// What a browser is told by every answer there is, counted as mozilla/http-observatory's scoring.md counts (its archived version):
/// 100 at first, points off for what is missing, points on for what is better than asked.
/// </summary>
public sealed class HeaderScoreTests(FloorApp app) : IClassFixture<FloorApp>
{
    private const int Least = 115; // A+ begins at 100
    private const string Csp = "Content-Security-Policy";
    private const string Hsts = "Strict-Transport-Security";
    private static readonly string[] SafeCookie = ["secure", "httponly", "samesite="];

    [Fact]
    public async Task Every_endpoint_over_tls_scores_115_at_least_and_is_kept_by_nobody_on_the_way()
    {
        var browser = OverTls(app.As(Role.Owner));
        var (calls, poor) = (RolesTests.CallsOf(app.Get<EndpointDataSource>()).ToList(), new List<string>());
        foreach (var (method, address) in calls)
        {
            using var answer = await AskAsync(browser, method, address);
            if (Score(answer) < Least || !IsKeptByNobody(answer))
            {
                poor.Add($"{method} {address}: {Score(answer)}, {answer.Headers.CacheControl}");
            }
        }

        Assert.True(calls.Count > 80, $"Only {calls.Count} of them.");
        Assert.Empty(poor);
    }

    [Fact]
    public async Task Every_file_scores_the_same()
    {
        var browser = OverTls(app.Stranger());
        var files = app.Get<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null)
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText)
            .Distinct(StringComparer.Ordinal)
            .ToList();

        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            using var answer = await AskAsync(browser, "GET", file);
            Assert.True(Score(answer) >= Least, $"{file}: {Score(answer)}");
        }
    }

    [Fact]
    public async Task No_page_holds_a_script_or_a_style_of_its_own()
    {
        var browser = app.As(Role.Owner);
        var pages = 0;
        foreach (var (method, address) in RolesTests.CallsOf(app.Get<EndpointDataSource>()))
        {
            if (method is not "GET" || await HtmlOfAsync(browser, address) is not { } html)
            {
                continue;
            }

            pages++;
            Assert.Equal((address, 0), (address, Inline(html)));
        }

        Assert.True(pages > 30, $"Only {pages} of them.");
    }

    [Theory]
    [InlineData("<script>go()</script>", 1)]
    [InlineData("<style>b{}</style><b onclick='go()'></b><a href='javascript:go()'></a>", 3)]
    [InlineData("<script src='floor.js'></script><link rel='stylesheet' href='floor.css'>", 0)]
    public void The_check_of_pages_can_fail(string html, int found) => Assert.Equal(found, Inline(html));

    [Fact]
    public async Task Over_plain_http_nobody_is_told_to_come_back_over_tls()
    {
        using var plain = await AskAsync(app.Stranger(), "GET", "/sign-in");
        using var sealedOne = await AskAsync(OverTls(app.Stranger()), "GET", "/sign-in");

        Assert.False(plain.Headers.Contains(Hsts));
        Assert.Equal("max-age=31536000", Assert.Single(sealedOne.Headers.GetValues(Hsts)));
    }

    [Theory]
    [InlineData(Csp, "", 65)] // nothing about frames either
    [InlineData(Csp, "default-src 'none'; script-src 'self' 'unsafe-inline'; frame-ancestors 'none'", 95)]
    [InlineData(Csp, "default-src 'none'; script-src 'self'", 90)]
    [InlineData(Hsts, "", 95)]
    [InlineData(Hsts, "max-age=60", 95)]
    [InlineData("Referrer-Policy", "unsafe-url", 105)]
    [InlineData("X-Content-Type-Options", "", 110)]
    [InlineData("Set-Cookie", "a=b; httponly; samesite=lax", 70)]
    public void The_score_can_fail(string header, string value, int score)
    {
        using var answer = new HttpResponseMessage();
        Dictionary<string, string> headers = new(StringComparer.Ordinal)
        {
            [Csp] = "default-src 'none'; script-src 'self'; frame-ancestors 'none'",
            [Hsts] = "max-age=31536000",
            ["Referrer-Policy"] = "same-origin",
            ["X-Content-Type-Options"] = "nosniff",
            ["Permissions-Policy"] = "camera=()",
            ["Cross-Origin-Opener-Policy"] = "same-origin",
            ["Cross-Origin-Resource-Policy"] = "same-origin",
        };
        Assert.Equal(Least, ScoreOf(headers));
        headers[header] = value;
        Assert.Equal(score, ScoreOf(headers));
    }

    private static int ScoreOf(Dictionary<string, string> headers)
    {
        using var answer = new HttpResponseMessage();
        foreach (var (name, value) in headers.Where(header => header.Value.Length > 0))
        {
            answer.Headers.TryAddWithoutValidation(name, value);
        }

        return Score(answer);
    }

    private static int Score(HttpResponseMessage answer)
    {
        var policy = Header(answer, Csp)
            .Split(';', StringSplitOptions.TrimEntries)
            .Select(part => part.Split(' '))
            .ToLookup(part => part[0], part => string.Join(' ', part[1..]), StringComparer.Ordinal);
        var script = string.Join(' ', policy["script-src"].DefaultIfEmpty(string.Join(' ', policy["default-src"])));
        var isFramed = !policy["frame-ancestors"].Contains("'none'", StringComparer.Ordinal);
        var cookies = answer.Headers.TryGetValues("Set-Cookie", out var set) ? set.ToList() : [];
        (bool Holds, int Points)[] counted =
        [
            (script.Length == 0, -25),
            (
                script.Contains("unsafe", StringComparison.Ordinal)
                    || script.Contains("data:", StringComparison.Ordinal),
                -20
            ),
            (MaxAge(answer) < 15_768_000, -20), // six months
            (isFramed, -20),
            (!isFramed, 5),
            (Header(answer, "X-Content-Type-Options") is not "nosniff", -5),
            (Header(answer, "Referrer-Policy") is "same-origin" or "no-referrer", 5),
            (Header(answer, "Referrer-Policy") is "unsafe-url" or "", -5),
            (cookies.TrueForAll(IsSafe), 5),
            (!cookies.TrueForAll(IsSafe), -40),
            // Ours: an answer without one of these fails, though nobody counts points for them.
            (Header(answer, "Permissions-Policy").Length == 0, -20),
            (Header(answer, "Cross-Origin-Opener-Policy") is not "same-origin", -20),
            (Header(answer, "Cross-Origin-Resource-Policy") is not "same-origin", -20),
        ];
        return 100 + counted.Where(one => one.Holds).Sum(one => one.Points);
    }

    private static bool IsSafe(string cookie) =>
        SafeCookie.All(word => cookie.Contains(word, StringComparison.OrdinalIgnoreCase));

    private static long MaxAge(HttpResponseMessage answer) =>
        Header(answer, Hsts).Split(';')[0].Split('=') is ["max-age", var seconds]
            ? long.Parse(seconds, CultureInfo.InvariantCulture)
            : 0;

    private static string Header(HttpResponseMessage answer, string name) =>
        answer.Headers.TryGetValues(name, out var values) ? string.Join(", ", values) : "";

    private static bool IsKeptByNobody(HttpResponseMessage answer) =>
        answer.Headers.CacheControl is { } cache && (cache.NoStore || cache is { Private: true, NoCache: true });

    private static int Inline(string html)
    {
        var page = new HtmlParser().ParseDocument(html);
        return page.QuerySelectorAll(
                "script:not([src]), style, a[href^='javascript:'], form[action^='javascript:']"
            ).Length
            + page.All.Count(element =>
                element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase))
            );
    }

    private static async Task<string?> HtmlOfAsync(HttpClient browser, string address)
    {
        using var answer = await AskAsync(browser, "GET", address);
        return answer.Content.Headers.ContentType?.MediaType is "text/html"
            ? await answer.Content.ReadAsStringAsync(FloorApp.Stop)
            : null;
    }

    // As a proxy on this machine says it.
    private static HttpClient OverTls(HttpClient browser)
    {
        browser.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        return browser;
    }

    private static async Task<HttpResponseMessage> AskAsync(HttpClient browser, string method, string address)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), address);
        return await browser.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, FloorApp.Stop); // the news never end
    }
}
