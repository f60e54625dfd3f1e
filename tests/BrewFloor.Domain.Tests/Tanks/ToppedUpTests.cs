using BrewFloor.Domain.Batches;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class ToppedUpTests
{
    [Fact]
    public void What_is_topped_up_adds_to_tank_and_batch()
    {
        var floor = After(Filled(400).On(0), ToppedUp(450).On(0, hour: 15));

        Assert.Equal(L(850), floor.Of(K3).Contents.Volume);
        Assert.Equal(L(850), floor.Of(Batch118).Litres.FilledIn);
    }

    [Fact]
    public void Only_beer_of_the_batch_is_topped_up() =>
        Assert.Equal(Level.Impossible, NewFloor.Says(ToppedUp(100).On(0)).LevelOf("no-such-beer"));

    [Theory]
    [InlineData(100, null)]
    [InlineData(101, Level.Caution)] // 1,001 L of 1,000 L working
    public void The_working_volume_counts_what_is_in_already(double litres, Level? level) =>
        Assert.Equal(level, After(Filled(900).On(0)).Says(ToppedUp(litres).On(1)).LevelOf("over-working"));

    [Fact]
    public void The_brim_counts_what_is_in_already() =>
        Assert.Equal(Level.Impossible, After(Filled(900).On(0)).Says(ToppedUp(301).On(1)).LevelOf("over-total"));

    [Fact]
    public void Cold_beer_that_was_topped_up_is_cold_when_it_is_read_again()
    {
        var topped = After(Filled(400).On(0), SetTo(2).On(9), Read(2).On(10), ToppedUp(400).On(11));

        Assert.Null(topped.Of(Batch118).Cold);
        Assert.Equal(Day(12), topped.And(Read(2).On(12)).Of(Batch118).Cold?.At);
    }

    [Fact]
    public void Wort_into_a_shut_tank_finds_no_way_out_for_the_gas() =>
        Assert.Equal(
            Level.HardStop,
            After(Filled(900).On(0))
                .Standing(K3, BeerTests.SealedAtNone)
                .Says(ToppedUp(90).On(1))
                .LevelOf("vent-closed")
        );

    [Fact]
    public void Beer_of_an_unknown_volume_stays_unknown_when_topped_up() =>
        Assert.Null(After(BatchTakenOver(null).On(0), ToppedUp(100).On(1)).Of(K3).Contents.Volume);

    [Fact]
    public void A_gravity_of_what_was_added_moves_the_original_gravity_and_is_no_reading_of_the_beer()
    {
        // by hand: (400 x 1.050 + 100 x 1.000) / 500
        var batch = After(FilledAt(1.050, 400).On(0), (ToppedUp(100) with { Gravity = Sg(1.000) }).On(1)).Of(Batch118);

        Assert.Equal(Sg20(1.040), batch.OriginalGravity);
        Assert.Single(batch.Gravities);
    }

    [Fact]
    public void Wort_whose_gravity_nobody_read_is_the_same_wort() =>
        Assert.Equal(Sg20(1.050), After(FilledAt(1.050, 400).On(0), ToppedUp(400).On(1)).Of(Batch118).OriginalGravity);

    [Fact]
    public void Part_of_an_unknown_wort_leaves_the_original_gravity_unknown() =>
        Assert.Null(
            After(Filled(400).On(0), (ToppedUp(100) with { Gravity = Sg(1.050) }).On(1)).Of(Batch118).OriginalGravity
        );

    [Fact]
    public void A_little_syrup_into_beer_that_nobody_measured_is_not_its_original_gravity()
    {
        var found = BatchTakenOver(null) with
        {
            NewBatch = new(Batch118.Id, "Harvest Ale", "Pale ale", BeerKind.Ale) { OriginalGravity = Sg20(1.050) },
        };
        var syrup = ToppedUp(2) with { Gravity = Sg(1.100) };

        Assert.Equal(Sg20(1.050), After(found.On(0), syrup.On(1)).Of(Batch118).OriginalGravity);
    }
}
