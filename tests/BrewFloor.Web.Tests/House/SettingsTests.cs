using System.Net;
using System.Net.Http.Headers;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.House;

/// <summary>The place, the tokens of programs, and what the process was started with.</summary>
public sealed class SettingsTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task The_place_is_moved_and_of_two_at_once_the_second_sees_both()
    {
        const string path = "/settings/site";
        var owner = app.As(Role.Owner);
        var opened = await owner.PageAsync(path);
        await owner.SendFormAsync(path, opened, "site", ("Input.Name", "Millbank"), ("Input.Zone", "Asia/Kathmandu"));

        var second = await owner.SendFormAsync(path, opened, "site", ("Input.Name", "Overbank"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await second.PageAsync();
        Assert.Equal("Overbank", page.QuerySelector("#site")!.GetAttribute("value"));
        Assert.Contains("Millbank, Asia/Kathmandu", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Asia/Kathmandu", (await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop)).Zone.Id);
    }

    [Theory]
    [InlineData("Input.Name", " ")]
    [InlineData("Input.Zone", "Moon/Base")]
    [InlineData("Input.Altitude", "9000")]
    [InlineData("Input.Altitude", "NaN")]
    public async Task A_place_that_is_nowhere_is_refused(string field, string text)
    {
        var before = await app.Get<HouseKeeping>().SiteAsync(FloorApp.Stop);

        (string, string)[] typed = field is "Input.Name" ? [(field, text)] : [("Input.Name", "Here"), (field, text)];

        var answer = await app.As(Role.Owner).SendFormAsync("/settings/site", "site", typed);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(before, await app.Get<HouseKeeping>().SiteAsync(FloorApp.Stop));
    }

    [Fact]
    public async Task A_token_is_shown_once_opens_the_api_and_ends()
    {
        const string path = "/settings/tokens";
        var owner = app.As(Role.Owner);
        using var nothing = await owner.PostAsync(path, new StringContent(""), FloorApp.Stop);
        Assert.Equal(HttpStatusCode.BadRequest, nothing.StatusCode);
        var made = await (await owner.SendFormAsync(path, "token", ("Input.Name", "Scale"))).PageAsync();
        var secret = made.QuerySelector("code.secret")!.TextContent;
        var program = app.Stranger();
        program.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("/api/v1/tanks", FloorApp.Stop)).StatusCode);

        var again = await owner.PageAsync(path);
        Assert.DoesNotContain(secret, again.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            HttpStatusCode.Conflict,
            (await owner.SendFormAsync(path, again, "token", ("Input.Name", "scale"))).StatusCode
        );
        var end = again.QuerySelector("input[name=_handler][value^='end-']")!.GetAttribute("value")!;
        await owner.SendFormAsync(path, again, end);

        Assert.Equal(HttpStatusCode.Unauthorized, (await program.GetAsync("/api/v1/tanks", FloorApp.Stop)).StatusCode);
    }

    [Fact]
    public void Every_variable_of_the_documents_is_shown_and_secrets_only_as_set()
    {
        var options = new StartOptions("serve", [], "/srv/floor", 8080);
        string[] otherwise = ["BREWFLOOR_DATA", "BREWFLOOR_DB_PASSWORD", "BREWFLOOR_ADDRESS", "BREWFLOOR_PORT"]; // options, and containers

        var all = StartedWith.All(options, name => $"value of {name}");

        Assert.Empty(
            Words
                .VariablesIn(Tree.Read("docs/operate/settings.md"))
                .Except(all.Select(one => one.Name))
                .Except(otherwise)
        );
        Assert.Equal(4, all.Count(one => one.IsHidden));
        Assert.All(all.Where(one => one.IsHidden), one => Assert.Equal("", one.Value));
        Assert.All(
            StartedWith.All(options, _ => null).Where(one => one.Name.Contains('_', StringComparison.Ordinal)),
            one => Assert.Null(one.Value)
        );
    }
}
