using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Shell;

/// <summary>Script switched off: the same pages, and nothing on them that only looks as if it could be pressed.</summary>
public sealed class WithoutScriptTests(FullFloor floor) : IClassFixture<FullFloor>
{
    [Fact]
    public async Task Every_page_is_the_same_page_without_script()
    {
        await using var with = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone);
        await using var without = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone with { HasScript = false });
        var found = new List<string>();
        foreach (var path in Pages.AllOf(floor))
        {
            await with.OpenAsync(path);
            await without.OpenAsync(path);
            found.AddRange(await Measures.DeadAsync(without));
            var (expected, shown) = (await HeadAsync(with), await HeadAsync(without));
            if (
                expected is ""
                || !string.Equals(expected, shown, StringComparison.Ordinal)
                || !await without.Main.IsVisibleAsync()
            )
            {
                found.Add($"{path}: \"{shown}\" in place of \"{expected}\"");
            }
        }

        Findings.None(found);
    }

    [Fact]
    public async Task What_is_dead_without_script_is_found()
    {
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync("/jobs");
        await olga.Page.EvaluateAsync(
            """
            () => document.querySelector('main').insertAdjacentHTML('beforeend',
              '<a>no way</a><button>no form</button><form><input><button type="button">only script</button></form>')
            """
        );

        Assert.Equal(4, (await Measures.DeadAsync(olga)).Count);
    }

    private static async Task<string> HeadAsync(Visit visit) =>
        (
            await visit.Page.GetByRole(Microsoft.Playwright.AriaRole.Heading, new() { Level = 1 }).InnerTextAsync()
        ).Trim();
}
