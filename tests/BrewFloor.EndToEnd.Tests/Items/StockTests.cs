using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Items;

/// <summary>Gaskets from the first count to the next order, by people with one phone; with script and without.</summary>
public sealed class StockTests(FloorApp floor) : IClassFixture<FloorApp>
{
    public static TheoryData<bool> WithAndWithoutScript => [true, false];

    [Theory]
    [MemberData(nameof(WithAndWithoutScript))]
    public async Task Gaskets_are_counted_used_on_a_tank_and_bought_again(bool hasScript)
    {
        var name = $"Clamp gasket {(hasScript ? 64 : 50)} mm";
        var phone = Screen.Phone with { HasScript = hasScript };
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, phone);

        await hanna.OpenAsync("/items");
        await hanna.PressAsync("Count something new");
        await hanna.TypeAsync("Name", name);
        await hanna.ChooseAsync("What it is", "Part");
        await hanna.TypeAsync("How much", "5");
        await hanna.TypeAsync("Buy more when this much is left", "3");
        await hanna.PressAsync("Count stock");
        await hanna.SeesAsync("5 pieces");

        await ChangesTwoAsync(hanna, name);

        await hanna.OpenAsync("/jobs");
        await hanna.SeesAsync($"{name}: 3 pieces left; more is bought at 3 pieces.");
        await hanna.OpenAsync("/items");
        await hanna.PressAsync(name);
        await hanna.SeesAsync("from stock: 2 pieces"); // said with the tank, in the item's own timeline too
        await hanna.PressAsync("Receive stock");
        await hanna.TypeAsync("How much", "20");
        await hanna.PressAsync("Receive stock");
        await hanna.SeesAsync("23 pieces");
        await hanna.OpenAsync("/jobs");
        await hanna.SeesNotAsync(name);
    }

    [Fact]
    public async Task Grams_of_what_is_counted_in_pieces_are_refused_with_both_said_and_nothing_lost()
    {
        var counted = SomeEntries.OnTheShelf("Sight glass seal", ItemKind.Part, StockAmount.Of(4));
        await floor.LogAsync(counted);
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Clean));
        await using var hanna = await floor.VisitAsync(FloorApp.Helper, Screen.Phone);

        await hanna.OpenAsync($"/tanks/{tank.Code}/log/gasket-changed");
        await hanna.TypeAsync("What", "Sight glass");
        await TakesAsync(hanna, "Sight glass seal", "20", "g");
        await hanna.PressAsync("Change a gasket");

        await hanna.SeesAsync("Sight glass seal is counted in pieces; 20 g can't be added to that.");
        Assert.Equal("Sight glass", await hanna.TypedAsync("What"));
    }

    private async Task ChangesTwoAsync(Visit hanna, string name)
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical);
        await floor.LogAsync(SomeEntries.Found(tank, Soil.Clean));
        await hanna.OpenAsync($"/tanks/{tank.Code}/log/gasket-changed");
        await hanna.TypeAsync("What", "Manway");
        await TakesAsync(hanna, name, "2", "pieces");
        await hanna.ShotIfWantedAsync($"stock-taken-{hanna.GetHashCode()}");
        await hanna.InsistAsync("Change a gasket");
        await hanna.SeesAsync("from stock: 2 pieces");
    }

    // In the first of the rows that are tucked away.
    private static async Task TakesAsync(Visit hanna, string name, string amount, string unit)
    {
        await hanna.UnfoldAsync("More");
        await hanna.ChooseFirstAsync("From stock", name);
        await hanna.TypeAsync("How much", amount, unit);
    }
}
