using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class TankTakenOverTests
{
    private static readonly TankTakenOver AsFound = new(K3.Id)
    {
        Soil = Soil.Sanitized,
        Closure = Closure.Closed,
        Gas = Gas.CarbonDioxide,
    };

    [Fact]
    public void A_tank_found_sanitized_counts_from_when_it_was_found()
    {
        var tank = After(AsFound.On(0)).Of(K3);

        Assert.Equal((Soil.Sanitized, Day(0)), (tank.Soil, tank.Sanitized?.At));
        Assert.Equal([new Stretch(Closure.Closed, Gas.CarbonDioxide, Day(0))], tank.StretchesSinceDrained);
        Assert.Null(tank.PressureNow());
    }

    [Fact]
    public void Steel_whose_history_nobody_knows_is_not_steel_that_was_never_passivated()
    {
        Assert.Equal(Day(0), After(AsFound.On(0)).Of(K3).PassivationUnknown?.At);
        Assert.Null(After((AsFound with { IsNeverPassivated = true }).On(0)).Of(K3).PassivationUnknown);
    }

    [Fact]
    public void The_day_it_dried_is_that_day_by_the_sites_calendar()
    {
        var found = AsFound with { Bath = BathKind.Citric, DriedOn = new DateOnly(2026, 1, 15) };

        var tank = After(found.On(0)).Of(K3);

        Assert.Equal(new DateOnly(2026, 1, 15), Rules.DateOf(tank.Dried!.Value.At));
        Assert.Equal(BathKind.Citric, tank.DriedAfter);
    }

    [Fact]
    public void It_cannot_have_dried_after_it_was_taken_over() =>
        Assert.Equal(
            ["dried-later"],
            NewFloor.Says((AsFound with { DriedOn = new DateOnly(2026, 3, 3) }).On(0)).Codes()
        );

    [Fact]
    public void A_liquid_found_in_it_is_in_it()
    {
        var tank = After((AsFound with { Contents = Holding.Sanitizer }).On(0)).Of(K3);

        Assert.Equal((Holding.Sanitizer, Day(0)), (tank.Contents.What, tank.SanitizerIn?.At));
    }

    [Fact]
    public void Beer_comes_with_its_batch()
    {
        Assert.Equal(["beer-by-batch"], NewFloor.Says((AsFound with { Contents = Holding.Beer }).On(0)).Codes());
        Assert.Equal(["tank-occupied"], After(Filled().On(0)).Says(AsFound.On(1)).Codes());
    }
}
