using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Labels;

namespace BrewFloor.Web.Tests.Labels;

/// <summary>Labels lead to tanks, today and in ten years.</summary>
public sealed class LabelsTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData("/labels")]
    [InlineData("/labels/print?tank=K1")]
    public async Task Until_the_address_is_known_there_are_none_and_the_page_says_who_can_help(string path)
    {
        await SayAddressAsync(null);

        var viewers = (await app.As(Role.Viewer).PageAsync(path)).QuerySelector("main")!;
        var owners = (await app.As(Role.Owner).PageAsync(path)).QuerySelector("main")!;

        Assert.Contains("Labels can't be printed yet", viewers.Words(), StringComparison.Ordinal);
        Assert.Null(viewers.QuerySelector("a[href='settings/address']"));
        Assert.NotNull(owners.QuerySelector("a[href='settings/address']"));
        Assert.Null(owners.QuerySelector(".label, input"));
    }

    [Fact]
    public async Task A_label_has_the_code_the_drawing_and_an_address_that_ends_in_the_tanks_page()
    {
        await SayAddressAsync("https://club.example/brewery");
        await app.TankAsync("L1");
        await app.TankAsync("L2");

        var label = Assert.Single(
            (await app.As(Role.Viewer).PageAsync("/labels/print?paper=Letter&tank=l1")).QuerySelectorAll(".label")
        );

        Assert.Equal(
            "https://club.example/brewery/tanks/L1",
            label.QuerySelector("svg.qr")!.GetAttribute("aria-label")
        );
        Assert.Equal("L1", label.QuerySelector(".code").Words());
        Assert.NotNull(label.QuerySelector("svg.tank"));
        Assert.Contains("Letter", label.ParentElement!.ClassList);
    }

    [Fact]
    public async Task All_tanks_in_use_are_ticked_or_the_one_somebody_came_from()
    {
        await SayAddressAsync("https://club.example");
        await app.TankAsync("L3");
        await RetiredAsync("L4");

        var all = Ticked(await app.As(Role.Viewer).PageAsync("/labels"));
        var one = Ticked(await app.As(Role.Viewer).PageAsync("/labels?tank=l4"));

        Assert.Contains("L3", all);
        Assert.DoesNotContain("L4", all);
        Assert.Equal(["L4"], one);
    }

    [Theory]
    [InlineData("/tanks/L5")]
    [InlineData("/tanks/l5")]
    public async Task A_tank_opens_by_its_code_in_any_letter_case_even_after_it_was_retired(string path)
    {
        if ((await app.Get<FloorReader>().TankAsync("L5", FloorApp.Stop)) is null)
        {
            await RetiredAsync("L5");
        }

        var page = await app.As(Role.Viewer).PageAsync(path);

        Assert.Equal("L5", page.QuerySelector("h1 .plate").Words());
    }

    [Fact]
    public async Task The_code_of_a_retired_tank_is_given_to_no_other_so_its_label_never_leads_astray()
    {
        var tank = await RetiredAsync("L6");

        var again = await app.Get<Inventory>()
            .AddAsync(tank with { Id = Guid.CreateVersion7(), RetiredOn = null }, app.Owner, FloorApp.Stop);

        Assert.Equal(["code-taken"], Assert.IsType<Edited.Refused>(again).Objections.Select(o => o.Code));
    }

    [Fact]
    public void A_code_is_a_square_with_a_quiet_border_of_four()
    {
        var code = QrCode.Of("https://club.example/tanks/L1");

        Assert.Equal(1, (code.Side - 8) % 4); // 21, 25, 29 ... squares (ISO/IEC 18004)
        Assert.StartsWith("M4 4h7v1h-7z", code.Path, StringComparison.Ordinal);
    }

    private static string[] Ticked(AngleSharp.Html.Dom.IHtmlDocument page) =>
        [.. page.QuerySelectorAll("input[name=tank][checked]").Select(box => box.GetAttribute("value")!)];

    private async Task<Tank> RetiredAsync(string code)
    {
        var tank = await app.TankAsync(code);
        var retired = tank with { Version = 1, RetiredOn = new DateOnly(2026, 1, 2) };
        Assert.IsType<Edited.Done>(await app.Get<Inventory>().EditAsync(retired, app.Owner, FloorApp.Stop));
        return retired;
    }

    private async Task SayAddressAsync(string? address)
    {
        var house = app.Get<HouseKeeping>();
        var site = await house.SiteAsync(FloorApp.Stop);
        Assert.True(await house.ChangeAsync(site with { Address = address }, FloorApp.Stop));
    }
}
