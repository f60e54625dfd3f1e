using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Store.Tanks;

namespace BrewFloor.EndToEnd.Tests.Tanks;

/// <summary>A tank that cannot be: a sentence, no tank, and everything that was typed still there.</summary>
public sealed class TankFormTests(FloorApp floor) : IClassFixture<FloorApp>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_cone_whose_angle_and_height_contradict_each_other_is_not_saved() =>
        await IsRefusedAsync(
            "G1",
            async olga => await olga.TypeAsync("or the height of the cone", "100", "mm"),
            "Angle and height of the cone contradict each other"
        );

    [Fact]
    public async Task A_working_volume_above_the_brim_is_not_saved() =>
        await IsRefusedAsync(
            "G2",
            async olga => await olga.TypeAsync("Filled on an ordinary day up to", "900", "L"),
            "The working volume must be"
        );

    [Fact]
    public async Task A_relief_valve_set_above_the_rating_is_not_saved() =>
        await IsRefusedAsync(
            "G3",
            async olga =>
            {
                await olga.TypeAsync("Rated pressure", "1.5", "bar");
                await olga.ChooseAsync("Read from", "The maker's plate");
                await olga.TypeAsync("Relief valve opens at", "2", "bar");
                await olga.TypeAsync("Relief valve last tested on", "2026-10-01");
            },
            "the vessel gives way first"
        );

    [Fact]
    public async Task A_code_that_another_tank_has_is_not_saved()
    {
        await floor.AddTankAsync(SomeTanks.Conical, "G4");

        await IsRefusedAsync("g4", _ => Task.CompletedTask, "Another tank has the code G4");
    }

    [Fact]
    public async Task A_code_that_a_retired_tank_had_is_not_saved()
    {
        var tank = await floor.AddTankAsync(SomeTanks.Conical, "G5");
        Assert.IsType<Edited.Done>(
            await floor
                .Services.GetRequiredService<Inventory>()
                .EditAsync(
                    tank with
                    {
                        RetiredOn = DateOnly.FromDateTime(FloorApp.Now.DateTime),
                        Version = 1,
                    },
                    floor.Author(FloorApp.Owner),
                    Stop
                )
        );

        await IsRefusedAsync("G5", _ => Task.CompletedTask, "or had it before it was retired");
    }

    private async Task IsRefusedAsync(string code, Func<Visit, Task> type, string sentence)
    {
        await using var olga = await floor.VisitAsync(FloorApp.Owner, Screen.Phone);
        await olga.OpenAsync("/new-tank");
        await olga.TypeAsync("Code on the plate", code);
        await olga.ChooseAsync("Type", "Conical fermenter");
        await olga.TypeAsync("Hottest cleaning it stands", "85", "°C");
        await olga.TypeAsync("Filled on an ordinary day up to", "120", "L");
        await olga.TypeAsync("Inside diameter of the cylinder", "520", "mm");
        await olga.TypeAsync("Height of the cylinder alone", "620", "mm");
        await olga.TypeAsync("Included cone angle, degrees", "60");
        await olga.TypeAsync("Inside diameter of the outlet", "38", "mm");
        await type(olga);
        var before = await TanksAsync();

        await olga.PressAsync("Save");

        await olga.SeesAsync(sentence);
        Assert.Equal(code, await olga.TypedAsync("Code on the plate"));
        Assert.Equal("520", await olga.TypedAsync("Inside diameter of the cylinder"));
        Assert.Equal(before, await TanksAsync());
        await Violations.NoneAsync(olga);
    }

    private async Task<int> TanksAsync() => (await floor.Reader.InventoryAsync(Stop)).Floor.Tanks.Count;
}
