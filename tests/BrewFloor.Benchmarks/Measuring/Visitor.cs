using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>One person with a browser: signs in by the form, keeps the cookie, reads pages to their end.</summary>
internal sealed partial class Visitor : IDisposable
{
    private readonly HttpClient _http;

    public Visitor(int port)
    {
        _http = new(
            new SocketsHttpHandler
            {
                CookieContainer = new CookieContainer(),
                AllowAutoRedirect = false,
                MaxConnectionsPerServer = 1,
            }
        )
        {
            BaseAddress = new($"http://127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)}"),
        };
    }

    public HttpClient Http => _http;

    public async Task SignInAsync(string name, string password)
    {
        var form = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["Input.Name"] = name,
            ["Input.Password"] = password,
        };
        var page = await _http.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        foreach (Match hidden in Hidden.Matches(page))
        {
            form[hidden.Groups["name"].Value] = WebUtility.HtmlDecode(hidden.Groups["value"].Value);
        }

        using var content = new FormUrlEncodedContent(form);
        using var answer = await _http.PostAsync(new Uri("/sign-in", UriKind.Relative), content);
        if (answer.StatusCode is not HttpStatusCode.Redirect || !await IsInAsync())
        {
            throw new InvalidOperationException($"Not signed in: {(int)answer.StatusCode}");
        }
    }

    /// <summary>The page, to its last byte.</summary>
    /// <returns>How many bytes it had.</returns>
    /// <exception cref="HttpRequestException">It was another answer than the page.</exception>
    public async Task<int> ReadAsync(string path)
    {
        using var answer = await _http.GetAsync(new Uri(path, UriKind.Relative));
        if (answer.StatusCode is not HttpStatusCode.OK)
        {
            throw new HttpRequestException($"{path} answered {(int)answer.StatusCode}.");
        }

        return (await answer.Content.ReadAsByteArrayAsync()).Length;
    }

    public void Dispose() => _http.Dispose();

    private async Task<bool> IsInAsync()
    {
        using var floor = await _http.GetAsync(new Uri("/", UriKind.Relative));
        return floor.StatusCode is HttpStatusCode.OK;
    }

    [GeneratedRegex(
        """<input type="hidden" name="(?<name>[^"]+)" value="(?<value>[^"]*)" ?/?>""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Hidden { get; }
}
