using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace BrewFloor.Web.Tests.Account;

/// <summary>How fast somebody may try names, passwords, codes and calls, by a clock that stands until it is put on.</summary>
public sealed class GuessingTests : IAsyncLifetime
{
    private readonly FakeTimeProvider _clock = new(TimeProvider.System.GetUtcNow());
    private readonly FloorApp _app;

    public GuessingTests(TestServer server) =>
        _app = new(server) { Instead = services => services.AddSingleton<TimeProvider>(_clock) };

    public ValueTask InitializeAsync() => _app.InitializeAsync();

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task From_one_address_each_wait_after_five_wrong_passwords_is_longer_than_the_one_before()
    {
        var (browser, tries) = (_app.Stranger("127.0.4.1"), 0);
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(0, await WaitAsync(browser, $"Nobody {tries++}"));
        }

        foreach (var seconds in (int[])[10, 20, 40, 80, 160, 300, 300])
        {
            Assert.Equal(seconds, await WaitAsync(browser, $"Nobody {tries++}"));
            _clock.Advance(TimeSpan.FromSeconds(seconds - 1));
            Assert.Equal(1, await WaitAsync(browser, _app.Person(Role.Owner).Name, FloorApp.Password)); // the right one too
            _clock.Advance(TimeSpan.FromSeconds(1));
            Assert.Equal(0, await WaitAsync(browser, $"Nobody {tries++}"));
        }

        Assert.Equal(0, await WaitAsync(_app.Stranger("127.0.4.2"), "Nobody elsewhere"));
        _clock.Advance(WrongTries.ForgottenAfter);
        Assert.Equal(0, await WaitAsync(browser, "Nobody at all"));
        Assert.Equal(0, await WaitAsync(browser, "Nobody either"));
    }

    [Fact]
    public async Task A_right_password_takes_back_its_own_try_and_no_other()
    {
        var browser = _app.Stranger("127.0.4.3");
        for (var i = 0; i < 5; i++)
        {
            await WaitAsync(browser, $"Nobody {i}");
            if (i < 4)
            {
                Assert.Equal(HttpStatusCode.Found, await TryAsync(browser, _app.Person(Role.Viewer).Name));
            }
        }

        Assert.Equal(10, await WaitAsync(browser, "Nobody"));
    }

    [Theory]
    [InlineData("Viewer")]
    [InlineData("Nobody")]
    public async Task A_name_waits_five_minutes_after_five_wrong_passwords_whether_somebody_is_called_so_or_not(
        string name
    )
    {
        for (var i = 1; i <= 5; i++)
        {
            Assert.Equal(0, await WaitAsync(_app.Stranger($"127.0.5.{i}"), name));
        }

        Assert.Equal(300, await WaitAsync(_app.Stranger("127.0.5.6"), name.ToUpperInvariant()));
        _clock.Advance(Guessing.LockedFor);
        Assert.Equal(0, await WaitAsync(_app.Stranger("127.0.5.7"), name)); // one more
        Assert.Equal(300, await WaitAsync(_app.Stranger("127.0.5.8"), name));
        _clock.Advance(Guessing.LockedFor + WrongTries.ForgottenAfter);
        for (var i = 9; i <= 13; i++)
        {
            Assert.Equal(0, await WaitAsync(_app.Stranger($"127.0.5.{i}"), name)); // from the beginning
        }

        Assert.Equal(300, await WaitAsync(_app.Stranger("127.0.5.14"), name));
    }

    [Fact]
    public async Task Of_three_hundred_guesses_at_once_from_a_hundred_addresses_five_are_tried()
    {
        var name = _app.Person(Role.Helper).Name;
        var waits = await Task.WhenAll(
            Enumerable
                .Range(1, 100)
                .Select(async n =>
                {
                    var browser = _app.Stranger($"127.0.6.{n}");
                    var page = await browser.PageAsync("/sign-in");
                    return await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => GuessAsync(browser, page, name)));
                })
        );

        HttpStatusCode[] answers = [.. waits.SelectMany(all => all)];
        Assert.Equal(5, answers.Count(status => status is HttpStatusCode.OK));
        Assert.All(
            answers.Where(status => status is not HttpStatusCode.OK),
            // Or, where so many at once are too many for the machine, to come again.
            status => Assert.True(status is HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable)
        );
        Assert.Equal(5, await _app.AskAsync<int>($"SELECT failed_sign_ins FROM people WHERE name = '{name}'"));
        Assert.Equal(HttpStatusCode.OK, (await _app.As(Role.Helper).GetAsync("/more", FloorApp.Stop)).StatusCode);
    }

    [Theory]
    [InlineData("/passkeys/sign-in", Paces.TriesAMinute)]
    [InlineData("/invite/never-made", Paces.TriesAMinute)]
    [InlineData("/setup", Paces.SetupsAMinute)]
    [InlineData("/setup/restore/upload", Paces.SetupsAMinute)]
    public async Task From_one_address_only_so_many_tries_a_minute_are_looked_at(string path, int most)
    {
        var browser = _app.Stranger("127.0.7.1");
        for (var i = 0; i < most; i++)
        {
            Assert.NotEqual(HttpStatusCode.TooManyRequests, (await PostAsync(browser, path)).StatusCode);
        }

        var refused = await PostAsync(browser, path);
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.Equal(60, refused.Headers.RetryAfter?.Delta?.TotalSeconds);
        Assert.Contains("Wait a minute", (await refused.PageAsync()).Body.Words(), StringComparison.Ordinal);
        Assert.NotEqual(HttpStatusCode.TooManyRequests, (await PostAsync(_app.Stranger("127.0.7.2"), path)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/sign-in", FloorApp.Stop)).StatusCode);
        _clock.Advance(TimeSpan.FromMinutes(1));
        Assert.NotEqual(HttpStatusCode.TooManyRequests, (await PostAsync(browser, path)).StatusCode);
    }

    [Fact]
    public async Task A_token_is_answered_six_hundred_times_a_minute_and_slows_no_other()
    {
        var (program, other) = (await _app.WithTokenAsync("read"), await _app.WithTokenAsync("read"));
        for (var i = 0; i < TokenPace.Usual; i++)
        {
            using var answer = await program.GetAsync("/api/v1/calculate", FloorApp.Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        _clock.Advance(TimeSpan.FromSeconds(18));
        var refused = await program.GetAsync("/api/v1/calculate", FloorApp.Stop);
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.Equal(42, refused.Headers.RetryAfter?.Delta?.TotalSeconds);
        Assert.Equal(Talk.Problem, refused.Content.Headers.ContentType?.MediaType);
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/api/v1/calculate", FloorApp.Stop)).StatusCode);
        _clock.Advance(TimeSpan.FromSeconds(42));
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("/api/v1/calculate", FloorApp.Stop)).StatusCode);
    }

    [Theory]
    [InlineData(null, 600)]
    [InlineData("30", 30)]
    public void The_pace_of_tokens_is_what_the_floor_was_started_with(string? text, int calls) =>
        Assert.Equal(calls, TokenPace.Read(text).CallsAMinute);

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("many")]
    [InlineData("1000001")]
    public void A_pace_that_is_no_pace_stops_the_start(string text) =>
        Assert.Contains(
            TokenPace.Variable,
            Assert.Throws<StartProblemException>(() => TokenPace.Read(text)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("203.0.113.7", "203.0.113.7")]
    [InlineData("::ffff:203.0.113.7", "203.0.113.7")]
    [InlineData("2001:db8:1:2:3:4:5:6", "20010DB800010002")]
    [InlineData("2001:db8:1:2::9", "20010DB800010002")]
    [InlineData("2001:db8:1:3::9", "20010DB800010003")]
    public void Devices_of_one_household_share_a_place(string address, string place) =>
        Assert.Equal(place, Guessing.Place(IPAddress.Parse(address)));

    // 0: it was tried, and wrong.
    private static async Task<double> WaitAsync(HttpClient browser, string name, string password = "wrong")
    {
        using var answer = await AnswerAsync(browser, name, password);
        var page = await answer.PageAsync();
        Assert.NotEmpty(page.QuerySelector("[role=alert]").Words());
        if (answer.StatusCode is HttpStatusCode.OK)
        {
            return 0;
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
        return answer.Headers.RetryAfter!.Delta!.Value.TotalSeconds;
    }

    private static async Task<HttpStatusCode> TryAsync(HttpClient browser, string name)
    {
        using var answer = await AnswerAsync(browser, name, FloorApp.Password);
        return answer.StatusCode;
    }

    private static Task<HttpResponseMessage> AnswerAsync(HttpClient browser, string name, string password) =>
        browser.SendFormAsync("/sign-in", "sign-in", ("Input.Name", name), ("Input.Password", password));

    private static async Task<HttpStatusCode> GuessAsync(
        HttpClient browser,
        AngleSharp.Html.Dom.IHtmlDocument page,
        string name
    )
    {
        (string, string)[] filled = [("Input.Name", name), ("Input.Password", "wrong")];
        using var answer = await browser.SendFormAsync("/sign-in", page, "sign-in", filled);
        return answer.StatusCode;
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient browser, string path) =>
        browser.PostAsync(path, new FormUrlEncodedContent([]), FloorApp.Stop);
}
