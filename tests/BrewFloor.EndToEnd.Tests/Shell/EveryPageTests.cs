using BrewFloor.EndToEnd.Tests.House;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;

namespace BrewFloor.EndToEnd.Tests.Shell;

/// <summary>Every page, in every theme, on a phone: nothing for the accessibility checker to say, nothing to push sideways.</summary>
public sealed class EveryPageTests(FullFloor floor) : IClassFixture<FullFloor>
{
    private static readonly string[] OtherThemes = ["dark", "sunlight"];

    private IReadOnlyList<Microsoft.AspNetCore.Http.Endpoint> Endpoints =>
        floor.App.Services.GetRequiredService<EndpointDataSource>().Endpoints;

    [Fact]
    public void Every_page_is_in_the_list_and_the_list_names_nothing_that_is_gone()
    {
        Assert.Empty(Pages.Forgotten(Endpoints));
        Assert.Empty(Pages.Gone(Endpoints));
    }

    [Fact]
    public void A_page_that_is_forgotten_is_found()
    {
        var added = new RouteEndpointBuilder(_ => Task.CompletedTask, RoutePatternFactory.Parse("/brand-new"), 0);

        Assert.Equal(["/brand-new"], Pages.Forgotten([.. Endpoints, added.Build()]));
        Assert.Contains("/jobs", Pages.Gone([]));
    }

    [Fact]
    public async Task No_page_stands_in_the_way_of_a_tank_whatever_it_is_called()
    {
        var inTheWay = new RouteEndpointBuilder(_ => Task.CompletedTask, RoutePatternFactory.Parse("/tanks/new"), 0);
        await using var vera = await floor.App.VisitAsync(FloorApp.Viewer, Screen.Phone);

        await vera.OpenAsync("/tanks/NEW");

        await vera.SeesAsync("Nobody knows how clean");
        Assert.Empty(Pages.InTheWayOfATank(Endpoints));
        Assert.Equal(["/tanks/new"], Pages.InTheWayOfATank([inTheWay.Build()]));
    }

    [Fact]
    public async Task A_phone_and_a_desk_show_it_to_everybody_in_every_theme_and_never_sideways()
    {
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone with { Theme = "light" });
        var found = new List<string>();
        foreach (var path in Pages.AllOf(floor))
        {
            await olga.OpenAsync(path);
            await olga.ShotIfWantedAsync($"page{Name(path)}-light");
            found.AddRange(await Violations.OnAsync(olga));
            found.AddRange(await Measures.TooWideAsync(olga, Screen.Desk.Width));
            await olga.ShotIfWantedAsync($"page{Name(path)}-desk");
            found.AddRange(await Measures.TooWideAsync(olga, 360));
            found.AddRange(await Measures.TooWideAsync(olga, 390));
            foreach (var theme in OtherThemes)
            {
                found.AddRange(await Violations.OfContrastAsync(olga, theme));
                await olga.ShotIfWantedAsync($"page{Name(path)}-{theme}");
            }
        }

        Findings.None(found);
    }

    [Fact]
    public async Task A_phone_shows_it_without_our_script_and_in_longer_words_and_never_sideways()
    {
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone with { Language = "de-DE" });
        await olga.WithoutFloorScriptAsync();
        var found = new List<string>();
        foreach (var path in Pages.AllOf(floor))
        {
            await olga.OpenAsync(path);
            await olga.ShotIfWantedAsync($"page{Name(path)}-de");
            found.AddRange(await Measures.TooWideAsync(olga, 360));
            found.AddRange(await Measures.TooWideAsync(olga, 390));
            // On the phone the checker looks at every page in English; at the desk it does here.
            found.AddRange(await Measures.TooWideAsync(olga, Screen.Desk.Width));
            found.AddRange(await Violations.OnAsync(olga));
        }

        Findings.None(found);
    }

    [Fact]
    public async Task What_is_too_wide_or_hard_to_read_is_found()
    {
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync("/jobs");
        await olga.Page.EvaluateAsync(
            """
            () => document.querySelector('main').insertAdjacentHTML('beforeend',
              '<p style="min-inline-size: 391px; color: var(--line)">Hardly there, and too wide</p>')
            """
        );

        Assert.Contains(
            await Violations.OnAsync(olga),
            line => line.Contains("color-contrast", StringComparison.Ordinal)
        );
        Assert.Contains(
            await Violations.OfContrastAsync(olga, "dark"),
            line => line.Contains("color-contrast in dark", StringComparison.Ordinal)
        );
        Assert.NotEmpty(await Measures.TooWideAsync(olga, 390));
    }

    private static string Name(string path) =>
        path is "/" ? "-floor" : path.Replace('/', '-').Replace('?', '-').Replace('=', '-');
}
