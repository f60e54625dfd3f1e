using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Tanks;

/// <summary>The first day: the floor is full of beer already.</summary>
public sealed class TakeOverTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private static readonly (Func<Guid, string, Tank> Make, string Beer, string Litres, string Gravity)[] Found =
    [
        (SomeTanks.Conical, "Kitchen-table pale", "100,5", "1.012"),
        (SomeTanks.PressureRated, "Market-day stout", "95", "1.018"),
        (SomeTanks.Bright, "Harvest lager", "150", "1.009"),
        (SomeTanks.PlasticConical, "Leftover mild", "40", "1.011"),
        (SomeTanks.Bucket, "Garage cider-like thing", "20", "1.004"),
    ];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Five_full_tanks_are_taken_over_in_one_go(bool hasScript)
    {
        var tanks = new List<Tank>();
        foreach (var (make, _, _, _) in Found)
        {
            tanks.Add(await floor.AddTankAsync(make));
        }

        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone with { HasScript = hasScript });
        await olga.OpenAsync("/take-over");
        foreach (var (tank, found) in tanks.Zip(Found))
        {
            await TypeAsync(olga, tank, "name", found.Beer);
            await TypeAsync(olga, tank, "volume", found.Litres);
            await TypeAsync(olga, tank, "gravity", found.Gravity);
        }

        await olga.InsistAsync("Take over");

        Assert.Equal("/", new Uri(olga.Page.Url).AbsolutePath);
        foreach (var (tank, found) in tanks.Zip(Found))
        {
            await olga.SeesAsync(found.Beer);
            await olga.SeesAsync(tank.Code);
            Assert.True((await floor.StateOfAsync(tank)).HoldsBeer);
            Assert.Equal(2, await floor.EntriesOnAsync(tank));
        }
    }

    [Fact]
    public async Task One_that_cannot_be_keeps_them_all_out_and_what_was_typed()
    {
        var good = await floor.AddTankAsync(SomeTanks.Conical);
        var bad = await floor.AddTankAsync(SomeTanks.Bucket);
        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync("/take-over");
        await TypeAsync(olga, good, "name", "Kitchen-table pale");
        await TypeAsync(olga, good, "volume", "100");
        await TypeAsync(olga, bad, "name", "More than a bucket");
        await TypeAsync(olga, bad, "volume", "400");

        await olga.PressAsync("Take over");

        await olga.SeesAsync("to the brim it holds");
        Assert.Equal("Kitchen-table pale", await Field(olga, good, "name").InputValueAsync());
        Assert.Equal("400", await Field(olga, bad, "volume").InputValueAsync());
        Assert.Equal(0, await floor.EntriesOnAsync(good));
        Assert.Equal(0, await floor.EntriesOnAsync(bad));
        await Violations.NoneAsync(olga);
    }

    private static Task TypeAsync(Visit olga, Tank tank, string name, string text) =>
        Field(olga, tank, name).FillAsync(text);

    // Each field's words are there once a tank: it is told by the tank it stands under.
    private static Microsoft.Playwright.ILocator Field(Visit olga, Tank tank, string name) =>
        olga.Main.Locator($"[name='{tank.Code}.{name}']");
}
