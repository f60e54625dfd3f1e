using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class EmptiedTests
{
    [Fact]
    public void An_emptied_tank_is_soiled_and_the_batch_is_closed_with_its_last_tank()
    {
        var floor = After(Filled(900).On(0), Filled(450, P2).On(0), Emptied(heel: 5).On(20));

        Assert.Equal((Soil.Soiled, Day(20)), (floor.Of(K3).Soil, floor.Of(K3).SoilSince.At));
        Assert.Equal((Contents.Nothing, L(5)), (floor.Of(K3).Contents, floor.Of(K3).Heel));
        Assert.Null(floor.Of(Batch118).Closed);

        Assert.Equal(Day(21), floor.And(Emptied(P2).On(21)).Of(Batch118).Closed?.At);
    }

    [Theory]
    [InlineData(9, null)] // 1 % of 900 L
    [InlineData(9.1, Level.Caution)]
    public void A_large_heel_is_said(double heel, Level? level) =>
        Assert.Equal(level, After(Filled(900).On(0)).Says(Emptied(heel: heel).On(20)).LevelOf("large-heel"));

    [Fact]
    public void What_was_booked_and_is_not_heel_is_a_measuring_difference()
    {
        var floor = After(Filled(900).On(0));

        Assert.Equal(Level.Caution, floor.Says(Emptied(heel: 5).On(20)).LevelOf("beer-missing"));
        Assert.Equal(L(895), floor.And(Emptied(heel: 5).On(20)).Of(Batch118).Litres.MeasuringDifference);
    }

    [Fact]
    public void A_heel_is_never_less_than_nothing() =>
        Assert.Equal(Level.Impossible, After(Filled(900).On(0)).Says(Emptied(heel: -1).On(20)).LevelOf("no-volume"));

    [Fact]
    public void No_heel_is_fine() =>
        Assert.Null(After(Filled(900).On(0)).Says(Emptied(heel: 0).On(20)).About("no-volume"));
}
