using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;

namespace BrewFloor.Web.Tests.House;

public sealed class HouseRulesPageTests(FloorApp app) : IClassFixture<FloorApp>
{
    private const string Path = "/settings/rules";
    private const string Open = "Input.Numbers[sanitized-open]";
    private const string Silent = "Input.Silent";
    private const string Slurry = "Input.Numbers[slurry]";

    [Fact]
    public async Task An_owner_changes_a_number_and_the_history_says_who_and_what()
    {
        var before = await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop);

        var answer = await app.As(Role.Owner).SendFormAsync(Path, "rules", (Slurry, "10"), ("Input.Counts", "true"));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var rules = await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop);
        Assert.Equal((10, true), (rules.SlurryDays, rules.CountsCultures));
        var page = await app.As(Role.Viewer).PageAsync(Path);
        var change = $"Slurry is stale after: {before.SlurryDays} to 10 days";
        Assert.Contains(change, page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("The club counts its yeast", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_absurd_rule_is_refused_and_what_was_typed_stands()
    {
        var before = await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop);

        var answer = await app.As(Role.Owner).SendFormAsync(Path, "rules", (Open, "9999"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await answer.PageAsync();
        Assert.Equal("9999", page.QuerySelector("#sanitized-open")!.GetAttribute("value"));
        Assert.Contains("Between 0.25 and 48 is expected", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(before, await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop));
    }

    [Fact]
    public async Task Of_two_owners_at_once_the_second_sees_both_values_and_loses_nothing()
    {
        var owner = app.As(Role.Owner);
        var opened = await owner.PageAsync(Path);
        await owner.SendFormAsync(Path, opened, "rules", (Open, "3"), ("Input.Numbers[vented-gas]", "1"));

        var second = await owner.SendFormAsync(Path, opened, "rules", (Open, "2"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await second.PageAsync();
        Assert.Equal("2", page.QuerySelector("#sanitized-open")!.GetAttribute("value"));
        Assert.Contains(
            "Now it is 3 h",
            page.QuerySelector("#sanitized-open-why")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Equal("1", page.QuerySelector("#vented-gas")!.GetAttribute("value")); // nobody typed over theirs
        await owner.SendFormAsync(Path, page, "rules");
        var rules = await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop);
        Assert.Equal((2, 1), (rules.SanitizedOpen.TotalHours, rules.VentedUnderCarbonDioxide.TotalHours));
    }

    [Fact]
    public async Task Of_two_owners_at_once_neither_loses_a_box_the_other_did_not_touch()
    {
        var owner = app.As(Role.Owner);
        await SwitchAsync(counts: false, "yeast-exposed", "hop-creep");
        var opened = await owner.PageAsync(Path);
        await SwitchAsync(counts: true, "yeast-exposed", "near-pressure-limit"); // one ticked, one cleared, and the yeast counted

        var second = await owner.SendFormAsync(Path, opened, "rules", (Slurry, "9"), (Silent, "hop-creep"));

        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        await owner.SendFormAsync(Path, await second.PageAsync(), "rules");
        var rules = await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop);
        Assert.Equal((9, true), (rules.SlurryDays, rules.CountsCultures));
        Assert.Equal(["near-pressure-limit"], rules.SilentCautions); // the second cleared one, the first another
    }

    private async Task SwitchAsync(bool counts, params string[] silent)
    {
        var house = app.Get<HouseKeeping>();
        var rules = await house.RulesAsync(FloorApp.Stop) with
        {
            CountsCultures = counts,
            SilentCautions = [.. silent],
        };
        Assert.True(await house.ChangeAsync(rules, app.Owner.Id, FloorApp.Stop));
    }

    [Fact]
    public async Task Whoever_is_not_an_owner_reads_them_and_changes_nothing()
    {
        var brewer = app.As(Role.Brewer);
        var opened = await brewer.PageAsync(Path);
        Assert.True(opened.QuerySelector("#slurry")!.HasAttribute("disabled"));

        var answer = await brewer.SendFormAsync(Path, opened, "rules", (Slurry, "3"));

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.NotEqual(3, (await app.Get<HouseKeeping>().RulesAsync(FloorApp.Stop)).SlurryDays);
    }
}
