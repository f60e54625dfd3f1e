using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Tests.Log;

/// <summary>On a helper's phone a brewer allows beforehand with their own password, and with nothing less.</summary>
public sealed class BrewersYesTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static int _tanks;

    private HttpClient? _phone; // each test's own helper: guesses are counted by whose phone it is
    private readonly string _path = $"/tanks/Y{Interlocked.Increment(ref _tanks)}/log/allowed";

    [Fact]
    public async Task A_brewer_says_yes_on_a_helpers_phone_and_the_entry_is_theirs()
    {
        await app.TankAsync(_path.Split('/')[2]);

        using var answer = await SayAsync("Brewer", FloorApp.Password);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(
            app.Person(Role.Brewer).Id,
            await app.AskAsync<Guid>("SELECT logged_by FROM entries ORDER BY seq DESC LIMIT 1")
        );
    }

    [Theory]
    [InlineData("Brewer", "a guess", "Name or password is not right")]
    [InlineData("Nobody", FloorApp.Password, "Name or password is not right")]
    [InlineData("Brewer", "", "Name or password is not right")]
    [InlineData("Helper", FloorApp.Password, "is not a brewer")]
    [InlineData("Viewer", FloorApp.Password, "is not a brewer")]
    public async Task Nobody_else_does(string name, string password, string says)
    {
        await app.TankAsync(_path.Split('/')[2]);
        var before = await app.EntriesAsync();

        using var answer = await SayAsync(name, password);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await answer.PageAsync();
        Assert.Contains(says, page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("It boiled", page.QuerySelector("[name=reason]")!.GetAttribute("value"));
        Assert.Null(page.QuerySelector("#brewer-password")!.GetAttribute("value"));
        Assert.Equal(before, await app.EntriesAsync());
    }

    [Fact]
    public async Task What_no_passkey_of_ours_answered_is_no_yes()
    {
        await app.TankAsync(_path.Split('/')[2]);
        var before = await app.EntriesAsync();

        using var answer = await SayAsync("", "", ("brewer.credential", "{}"), ("brewer.state", "made up"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("not accepted", (await answer.PageAsync()).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(before, await app.EntriesAsync());
    }

    [Fact]
    public async Task Guessing_closes_the_account_for_a_while_and_asking_while_typing_does_not()
    {
        await app.TankAsync(_path.Split('/')[2]);
        var owner = await app.PersonAsync(
            $"O{_path.Split('/')[2]}",
            Role.Owner,
            app.Get<Passwords>().Hash("right one")
        );
        for (var typed = 0; typed < 2 * WrongTries.Free; typed++)
        {
            using var asked = await SayAsync(owner.Name, "half typ", ("check", "true"));
            Assert.Equal(HttpStatusCode.OK, asked.StatusCode);
        }

        for (var guess = 0; guess < WrongTries.Free; guess++)
        {
            using var wrong = await SayAsync(owner.Name, "a guess");
        }

        using var late = await SayAsync(owner.Name, "right one");
        Assert.Contains(
            "Too many wrong passwords from here",
            (await late.PageAsync()).Body!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_brewer_on_their_own_phone_is_not_asked()
    {
        await app.TankAsync(_path.Split('/')[2]);

        Assert.Null((await app.As(Role.Brewer).PageAsync(_path)).QuerySelector("#brewer-password"));
    }

    private async Task<HttpResponseMessage> SayAsync(string name, string password, params (string, string)[] also)
    {
        _phone ??= app.As(await app.PersonAsync($"H{_path.Split('/')[2]}", Role.Helper, hash: null));
        return await _phone.SendFormAsync(
            _path,
            "entry",
            [
                ("kind", "filled"),
                ("codes", "not-sanitized"),
                ("reason", "It boiled"),
                ("brewer.name", name),
                ("brewer.password", password),
                .. also,
            ]
        );
    }
}
