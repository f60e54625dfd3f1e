using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Tests.Account;

/// <summary>What owners read about the doors of the house.</summary>
public sealed class SecurityLogTests(FloorApp app) : IClassFixture<FloorApp>
{
    private const string Path = "/settings/security";
    private const string Wrong = "a quite wrong password";

    private SecurityBook Book => app.Get<SecurityBook>();

    [Fact]
    public async Task What_happens_to_the_doors_is_written_down_with_who_and_whom()
    {
        var (owner, hash) = (app.Person(Role.Owner), app.Get<Passwords>().Hash(FloorApp.Password));
        var ann = await app.PersonAsync("Ann", Role.Helper, hash);
        var stranger = app.Stranger("127.0.8.1");
        await SignInAsync(stranger, "Ann", Wrong);
        await SignInAsync(stranger, "Ann", FloorApp.Password);
        var browser = app.As(owner);
        await browser.SendFormAsync(
            $"/people/{ann.Id}",
            "person",
            ("Input.Role", "Brewer"),
            ("Input.IsActive", "true")
        );
        await browser.SendFormAsync(
            $"/people/{ann.Id}",
            "person",
            ("Input.Role", "Brewer"),
            ("Input.IsActive", "false")
        );
        await browser.SendFormAsync("/people", "invite", ("Input.Name", "Bo"), ("Input.Role", "Viewer"));
        await browser.SendFormAsync("/settings/tokens", "token", ("Input.Name", "Gauge"), ("Input.Scopes", "read"));

        Assert.Equal(
            [
                (SecurityKind.LetGo, owner.Id, ann.Id, null),
                (SecurityKind.RoleChanged, owner.Id, ann.Id, "helper → brewer"),
                (SecurityKind.SignedIn, ann.Id, null, null),
                (SecurityKind.SignInFailed, null, ann.Id, null),
            ],
            (await OfAsync(ann.Id)).Select(one => (one.Kind, one.By, one.About, one.Detail))
        );
        var all = await OfAsync(owner.Id);
        Assert.Contains(all, one => one is { Kind: SecurityKind.InviteMade, Detail: "Bo, viewer" });
        Assert.Contains(all, one => one is { Kind: SecurityKind.TokenMade, Detail: "Gauge: read" });
    }

    [Fact]
    public async Task The_fifth_wrong_password_says_that_the_name_is_closed()
    {
        var bea = await app.PersonAsync("Bea", Role.Helper, app.Get<Passwords>().Hash(FloorApp.Password));
        var browser = app.Stranger("127.0.8.2");
        for (var i = 0; i < WrongTries.Free; i++)
        {
            await SignInAsync(browser, "Bea", Wrong);
        }

        var kinds = (await OfAsync(bea.Id)).Select(one => one.Kind).ToList();
        Assert.Equal([SecurityKind.LockedOut, .. Enumerable.Repeat(SecurityKind.SignInFailed, WrongTries.Free)], kinds);
    }

    [Fact]
    public async Task No_password_and_no_token_and_no_whole_address_is_in_the_log()
    {
        await SignInAsync(app.Stranger("127.0.8.3"), Wrong, Wrong); // typed into the wrong field
        using var forged = await ForgedAsync("/invite/a-secret-link/passkey");
        var page = await (
            await app.As(Role.Owner)
                .SendFormAsync("/settings/tokens", "token", ("Input.Name", "Scale"), ("Input.Scopes", "read"))
        ).PageAsync();
        var secret = page.QuerySelector("code.secret").Words();

        Assert.NotEmpty(secret);
        var text = await app.AskAsync<string>("SELECT string_agg(e::text, ' ') FROM security_events e");
        Assert.Contains("RefusedFromElsewhere", text, StringComparison.Ordinal);
        Assert.DoesNotContain(Wrong, text, StringComparison.Ordinal);
        Assert.DoesNotContain("a-secret-link", text, StringComparison.Ordinal);
        Assert.DoesNotContain(secret, text, StringComparison.Ordinal);
        Assert.DoesNotContain("127.0.8", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_another_site_sends_is_written_down_once_a_minute()
    {
        for (var i = 0; i < 3; i++)
        {
            using var refused = await ForgedAsync("/theme", from: "127.0.8.4");
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        }

        Assert.Equal(1, await app.AskAsync<long>("SELECT count(*) FROM security_events WHERE detail = 'POST /theme'"));
    }

    [Fact]
    public async Task An_owner_reads_it_the_newest_first_page_by_page_and_of_one_person()
    {
        var cem = await app.PersonAsync("Cem", Role.Helper, hash: null);
        for (var i = 1; i <= 130; i++)
        {
            await Book.WriteAsync(new(SecurityKind.PasskeyAdded, cem.Id) { Detail = $"key {i}" }, FloorApp.Stop);
        }

        await Book.WriteAsync(new(SecurityKind.Restored) { Detail = "of nobody" }, FloorApp.Stop);
        var browser = app.As(Role.Owner);
        Assert.Contains("of nobody", (await browser.PageAsync(Path)).Body.Words(), StringComparison.Ordinal);

        var page = await browser.PageAsync($"{Path}?person={cem.Id}");
        var lines = page.QuerySelectorAll("ul.lines li").Select(line => line.Words()).ToList();
        Assert.Equal(100, lines.Count);
        Assert.StartsWith("Passkey added", lines[0], StringComparison.Ordinal);
        Assert.Contains("Cem · key 130", lines[0], StringComparison.Ordinal);

        var older = await browser.PageAsync("/" + page.QuerySelector("main a[href*=before]")!.GetAttribute("href"));
        Assert.Equal(30, older.QuerySelectorAll("ul.lines li").Length);
        Assert.Contains("key 1 ", older.Body.Words() + " ", StringComparison.Ordinal);
        Assert.Null(older.QuerySelector("main a[href*=before]"));
    }

    [Fact]
    public async Task The_app_adds_to_the_log_and_can_neither_change_nor_delete_a_line()
    {
        await Book.WriteAsync(new(SecurityKind.Restored), FloorApp.Stop);
        foreach (
            var statement in (string[])["UPDATE security_events SET kind = 'Restored'", "DELETE FROM security_events"]
        )
        {
            await using var command = app.Get<NpgsqlDataSource>().CreateCommand(statement);
            var refused = await Assert.ThrowsAsync<PostgresException>(() =>
                command.ExecuteNonQueryAsync(FloorApp.Stop)
            );
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        }
    }

    [Fact]
    public async Task A_line_of_the_log_is_let_go_after_its_days()
    {
        await using var owner = NpgsqlDataSource.Create(app.OwnerConnection);
        await using var old = owner.CreateCommand(
            "INSERT INTO security_events (kind, at, detail) VALUES ('Restored', now() - interval '31 days', 'old'), ('Restored', now() - interval '29 days', 'young')"
        );
        await old.ExecuteNonQueryAsync(FloorApp.Stop);

        await SecurityBook.ForgetAsync(app.OwnerConnection, SecurityKept.Read("30").For, FloorApp.Stop);

        Assert.Equal(
            "young",
            await app.AskAsync<string>(
                "SELECT string_agg(detail, ' ') FROM security_events WHERE detail IN ('old', 'young')"
            )
        );
    }

    [Theory]
    [InlineData("29")]
    [InlineData("3651")]
    [InlineData("ten")]
    public void How_long_it_is_kept_is_a_number_of_days_or_the_start_is_stopped(string text) =>
        Assert.Contains(
            SecurityKept.Variable,
            Assert.Throws<StartProblemException>(() => SecurityKept.Read(text)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("203.0.113.7", "203.0.113.x")]
    [InlineData("::ffff:203.0.113.7", "203.0.113.x")]
    [InlineData("2001:db8:1:2:3:4:5:6", "2001:db8:1::")]
    [InlineData("127.0.0.1", "this machine")]
    public void Of_an_address_its_network_is_written_down(string address, string network) =>
        Assert.Equal(network, SecurityLog.NetworkOf(IPAddress.Parse(address)));

    [Fact]
    public void What_somebody_typed_stays_on_one_line() =>
        Assert.Equal(
            "Bo  1501 all is well",
            new SecurityEvent(SecurityKind.InviteMade) { Detail = "Bo\r\n1501 all is well" }.Detail
        );

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, string name, string password) =>
        browser.SendFormAsync("/sign-in", "sign-in", ("Input.Name", name), ("Input.Password", password));

    private async Task<HttpResponseMessage> ForgedAsync(string path, string from = "127.0.8.5")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Headers = { { "Sec-Fetch-Site", "cross-site" } },
        };
        return await app.Stranger(from).SendAsync(request, FloorApp.Stop);
    }

    private async Task<List<SecurityEvent>> OfAsync(Guid person) =>
        [.. (await Book.ReadAsync(person, before: null, 100, FloorApp.Stop)).Notes.Select(note => note.Event)];
}
