using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class RackedTests
{
    private static readonly Floor Full = After(Filled(900).On(0));

    [Fact]
    public void The_rest_leaves_the_first_tank_soiled_with_its_heel()
    {
        var floor = Full.And(Racked(870, left: 25).On(14));

        var (from, to) = (floor.Of(K3), floor.Of(B1));
        Assert.Equal((Holding.Nothing, Soil.Soiled, L(25)), (from.Contents.What, from.Soil, from.Heel));
        Assert.Equal(Day(14), from.LastEmptied?.At);
        Assert.Equal((Batch118.Id, L(870), Soil.InUse), (to.BatchId, to.Contents.Volume, to.Soil));
    }

    [Fact]
    public void A_tank_that_is_not_ready_is_stopped_from_taking_beer() =>
        Assert.Equal(Level.Stop, Full.Says(Racked(870, left: 25).On(14)).About("not-sanitized")?.Level);

    [Fact]
    public void What_neither_arrived_nor_stayed_is_a_measuring_difference()
    {
        var batch = Full.And(Racked(870, left: 25).On(14)).Of(Batch118);

        Assert.Equal((L(25), L(5)), (batch.Litres.Left, batch.Litres.MeasuringDifference));
        Assert.Equal(B1.Id, Assert.Single(batch.InTanks).TankId);
        Assert.Null(batch.Closed);
    }

    [Fact]
    public void Part_of_it_leaves_the_first_tank_in_use()
    {
        var floor = Full.And((Racked(400) with { IsRest = false }).On(14));

        Assert.Equal((L(500), Soil.InUse), (floor.Of(K3).Contents.Volume, floor.Of(K3).Soil));
        Assert.Equal([L(500), L(400)], floor.Of(Batch118).InTanks.Select(beer => beer.Volume!.Value));
    }

    [Fact]
    public void Beer_joins_what_is_there_of_the_same_batch()
    {
        var floor = After(Filled(300).On(0), Filled(400, P2).On(0));
        var racked = Racked(300, K3, P2).On(5);

        Assert.Null(floor.Says(racked).About("tank-occupied"));
        Assert.Null(floor.Says(racked).About("not-sanitized")); // it went in with the beer that is there
        Assert.Equal(L(700), floor.And(racked).Of(P2).Contents.Volume);
        Assert.Equal(Day(0), floor.And(racked).Of(P2).LastFilled?.At);
    }

    [Fact]
    public void Joining_beer_needs_a_way_out_for_the_gas() =>
        Assert.Equal(
            Level.HardStop,
            After(Filled(300).On(0), Filled(400, P2).On(0))
                .Standing(P2, BeerTests.SealedAtNone)
                .Says(Racked(90, K3, P2).On(5))
                .LevelOf("vent-closed")
        );

    [Fact]
    public void Joining_beer_must_fit_on_top_of_what_is_there() =>
        Assert.Equal(
            Level.Impossible,
            After(Filled(300).On(0), Filled(400, P2).On(0)).Says(Racked(201, K3, P2).On(5)).LevelOf("over-total")
        );

    [Fact]
    public void Beer_of_another_batch_in_the_second_tank_is_impossible() =>
        Assert.Equal(
            Level.Impossible,
            Full.And(Filled(500, B1, Batch119).On(1)).Says(Racked(300).On(5)).LevelOf("tank-occupied")
        );

    [Fact]
    public void A_tank_is_not_racked_into_itself() =>
        Assert.Equal(Level.Impossible, Full.Says(Racked(300, K3, K3).On(5)).LevelOf("same-tank"));

    [Fact]
    public void Beer_that_is_not_there_is_not_racked() =>
        Assert.Equal(Level.Impossible, NewFloor.Says(Racked(300).On(5)).LevelOf("no-such-beer"));

    [Theory]
    [InlineData(927, 0, null)] // 3 % of 900 L above what was booked
    [InlineData(927.1, 0, Level.Impossible)]
    [InlineData(900, 27.1, Level.Impossible)] // what stayed behind was in it too
    public void More_out_than_in_is_impossible_beyond_measuring_error(double litres, double left, Level? level) =>
        Assert.Equal(level, Full.Says(Racked(litres, left: left).On(14)).LevelOf("more-out-than-in"));

    [Theory]
    [InlineData(22, null)] // 2 L are more than 3 % of 20 L
    [InlineData(22.1, Level.Impossible)]
    public void A_small_tank_is_given_two_litres(double litres, Level? level) =>
        Assert.Equal(
            level,
            After(Filled(20, Bucket).On(0)).Says(Racked(litres, Bucket, S1).On(14)).LevelOf("more-out-than-in")
        );

    [Fact]
    public void The_error_is_used_up_once()
    {
        var part = Racked(920) with { IsRest = false };
        var floor = Full.And(part.On(14)); // 20 of 27 L used

        Assert.Equal(Level.Impossible, floor.Says(Racked(8, K3, P2).On(15)).LevelOf("more-out-than-in"));
        Assert.Null(floor.Says(Racked(7, K3, P2).On(15)).About("more-out-than-in"));
    }

    [Fact]
    public void A_measured_level_gives_the_whole_error_back()
    {
        var part = Racked(920) with { IsRest = false };
        var floor = Full.And(part.On(14), LevelMeasured(10).On(15));

        Assert.Null(floor.Says(Racked(37, K3, P2).On(16)).About("more-out-than-in")); // 10 L and 3 % of 900 L
    }

    [Fact]
    public void Beer_first_measured_after_taking_over_is_given_a_share_of_what_was_found() =>
        Assert.Null(
            After(BatchTakenOver(null).On(0), LevelMeasured(900).On(1))
                .Says(Racked(927).On(14))
                .About("more-out-than-in")
        );

    [Fact]
    public void A_measured_level_lets_it_out_again()
    {
        var floor = Full.And(LevelMeasured(960).On(13));

        Assert.Null(floor.Says(Racked(950).On(14)).About("more-out-than-in"));
    }

    [Fact]
    public void Beer_of_an_unknown_volume_has_no_limit_until_it_is_measured()
    {
        var floor = After(BatchTakenOver(null).On(0));

        Assert.Null(floor.Says(Racked(1000).On(14)).About("more-out-than-in"));
        Assert.Equal(
            Level.Impossible,
            floor.And(LevelMeasured(900).On(13)).Says(Racked(1000).On(14)).LevelOf("more-out-than-in")
        );
    }

    [Theory]
    [InlineData(873, null)] // 27 L missing: 3 %
    [InlineData(872, Level.Caution)]
    public void Beer_that_goes_missing_at_the_end_is_said(double litres, Level? level) =>
        Assert.Equal(level, Full.Says(Racked(litres).On(14)).LevelOf("beer-missing"));

    [Fact]
    public void An_unpurged_target_is_cautioned_and_a_bucket_cannot_be_purged()
    {
        Assert.Equal(Level.Caution, Full.Says(Racked(870).On(14)).LevelOf("target-not-purged"));
        Assert.Null(
            Full.Standing(B1, t => t with { Gas = Gas.CarbonDioxide })
                .Says(Racked(870).On(14))
                .About("target-not-purged")
        );
        Assert.Null(After(Filled(20, S1).On(0)).Says(Racked(20, S1, Bucket).On(9)).About("target-not-purged"));
    }

    [Fact]
    public void Unfinished_beer_is_cautioned_on_its_way() =>
        Assert.Equal(Level.Caution, Full.Says(Racked(870).On(14)).LevelOf("gravity-not-stable"));

    [Fact]
    public void Cold_beer_stays_cold_on_its_way()
    {
        var cold = Full.And(SetTo(2).On(10), Read(2.5).On(11));

        Assert.Equal(Day(11), cold.And(Racked(870, left: 30).On(14)).Of(Batch118).Cold?.At);
    }

    [Fact]
    public void Pumping_out_of_a_tank_sealed_at_no_pressure_pulls_a_vacuum() =>
        Assert.Equal(
            Level.Caution,
            Full.Standing(K3, BeerTests.SealedAtNone).Says(Racked(870).On(14)).LevelOf("sealed-no-pressure")
        );

    [Fact]
    public void Hops_left_behind_are_out_of_the_beer()
    {
        var batch = Full.And(DryHopped().On(7), Racked(870, left: 30).On(12)).Of(Batch118);

        Assert.Equal(Day(12), Assert.Single(batch.DryHops).OutAt);
    }
}
