using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class LevelMeasuredTests
{
    [Theory]
    [InlineData(880, 20)]
    [InlineData(910, -10)] // there was more than booked
    public void The_books_follow_the_level(double litres, double difference)
    {
        var floor = After(Filled(900).On(0), LevelMeasured(litres).On(3));

        Assert.Equal(L(litres), floor.Of(K3).Contents.Volume);
        Assert.Equal(L(litres), Assert.Single(floor.Of(Batch118).InTanks).Volume);
        Assert.Equal(L(difference), floor.Of(Batch118).Litres.MeasuringDifference);
    }

    [Fact]
    public void A_level_makes_an_unknown_volume_known_and_counts_as_filled_in()
    {
        var batch = After(BatchTakenOver(null).On(0), LevelMeasured(700).On(1)).Of(Batch118);

        Assert.Equal((L(700), L(0)), (batch.Litres.FilledIn, batch.Litres.MeasuringDifference));
    }

    [Fact]
    public void A_level_far_off_is_a_bad_reading_but_a_reading() =>
        Assert.Empty(After(Filled(900).On(0)).Says(LevelMeasured(20).On(3)).Objections);

    [Theory]
    [InlineData(1200, null)]
    [InlineData(1200.5, "over-total")]
    [InlineData(-1, "no-volume")]
    public void A_volume_the_tank_cannot_hold_is_unreadable(double litres, string? code) =>
        Assert.Equal(code, After(Filled(900).On(0)).Says(LevelMeasured(litres).On(3)).Codes().SingleOrDefault());

    [Fact]
    public void A_level_above_the_highest_mark_is_unreadable()
    {
        var level = LevelMeasured(900) with { Level = Length.FromMillimeters(1201) };

        Assert.Equal(["level-outside-tank"], After(Filled(900).On(0)).Says(level.On(3)).Codes());
    }

    [Fact]
    public void Beer_is_measured_with_its_batch_or_the_books_would_part()
    {
        var bare = LevelMeasured(880) with { BatchId = null };
        var floor = After(Filled(900).On(0));

        Assert.Equal(["batch-not-named"], floor.Says(bare.On(3)).Codes());
        Assert.Equal(["no-such-beer"], floor.Says(LevelMeasured(880, batch: Batch119).On(3)).Codes());
        Assert.Equal(L(900), floor.And(bare.On(3)).Of(K3).Contents.Volume);
    }

    [Fact]
    public void An_empty_tank_has_no_level() =>
        Assert.Equal(["nothing-in-tank"], NewFloor.Says((LevelMeasured(10) with { BatchId = null }).On(0)).Codes());
}
