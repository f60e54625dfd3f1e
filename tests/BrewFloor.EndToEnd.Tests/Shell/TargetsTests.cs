using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Shell;

/// <summary>Gloves on: what is pressed on the floor is 64 px high and 12 px apart, at a desk 44 px; and text may be twice as large.</summary>
public sealed class TargetsTests(FullFloor floor) : IClassFixture<FullFloor>
{
    [Fact]
    public async Task Everything_on_a_page_of_the_floor_can_be_hit_with_gloves_on()
    {
        await using var hanna = await floor.App.VisitAsync(FloorApp.Brewer, Screen.Phone);
        var found = new List<string>();
        foreach (var path in Pages.OnTheFloor(floor))
        {
            await hanna.OpenAsync(path);
            found.AddRange(await Targets.MissedAsync(hanna, Targets.OnTheFloor, 390, 360));
        }

        Findings.None(found);
    }

    [Fact]
    public async Task Everything_on_a_page_of_the_desk_can_be_hit()
    {
        await using var olga = await floor.App.VisitAsync(FloorApp.Owner, Screen.Desk);
        var found = new List<string>();
        foreach (var path in Pages.AtTheDesk(floor))
        {
            await olga.OpenAsync(path);
            found.AddRange(await Targets.MissedAsync(olga, Targets.AtTheDesk, 1280, 390));
        }

        Findings.None(found);
    }

    [Fact]
    public async Task With_text_twice_as_large_no_word_is_cut_off()
    {
        await using var hanna = await floor.App.VisitAsync(FloorApp.Brewer, Screen.Phone);
        var found = new List<string>();
        foreach (var path in Pages.OnTheFloor(floor).Union(Pages.AllOf(floor)))
        {
            await hanna.OpenAsync(path);
            found.AddRange(await Measures.CutOffAtTwiceTheTextAsync(hanna));
        }

        Findings.None(found);
    }

    [Fact]
    public async Task A_button_too_small_one_too_close_and_a_word_cut_off_are_found()
    {
        await using var hanna = await floor.App.VisitAsync(FloorApp.Brewer, Screen.Phone);
        await hanna.OpenAsync("/more");
        var before = (await Targets.MissedAsync(hanna, Targets.AtTheDesk, 390)).Count;
        await hanna.Page.EvaluateAsync(
            """
            () => document.querySelector('main').insertAdjacentHTML('beforeend',
              `<form><button style="block-size: 43px; inline-size: 60px">small</button><button style="block-size: 64px">close</button>
               <p style="overflow: clip; inline-size: 60px"><span style="white-space: nowrap">Words that are cut off</span></p></form>`)
            """
        );

        var found = await Targets.MissedAsync(hanna, Targets.AtTheDesk, 390);

        Assert.Equal(before + 2, found.Count);
        Assert.Contains(found, line => line.Contains("\"small\" is 60 x 43", StringComparison.Ordinal));
        Assert.Contains(found, line => line.Contains("\"small\" and button \"close\"", StringComparison.Ordinal));
        Assert.Contains(
            await Measures.CutOffAtTwiceTheTextAsync(hanna),
            line => line.Contains("Words that are cut off", StringComparison.Ordinal)
        );
    }
}
