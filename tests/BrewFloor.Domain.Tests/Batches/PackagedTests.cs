using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class PackagedTests
{
    private static readonly Floor Finished = After(
        FilledAt(1.050).On(0),
        Pitched().On(0, hour: 10),
        Dumped(Sediment.Yeast, 10).On(8),
        Gravity(1.010).On(9),
        Gravity(1.010).On(11)
    );

    private static readonly Floor Creeping = After(
        FilledAt(1.050).On(0),
        Pitched().On(0, hour: 10),
        Gravity(1.010).On(9),
        Gravity(1.010).On(11),
        DryHopped().On(12)
    );

    [Fact]
    public void Finished_beer_goes_into_kegs_without_a_word() =>
        Assert.Empty(Finished.Says(Kegged(300).On(20)).Objections);

    [Fact]
    public void Packaging_in_parts_leaves_the_tank_in_use_and_the_rest_closes_the_account()
    {
        var part = Finished.And(Kegged(300).On(20));
        var all = part.And(Kegged(580).Rest(heel: 5).On(21));

        Assert.Equal((Soil.InUse, L(590)), (part.Of(K3).Soil, part.Of(K3).Contents.Volume));
        Assert.Equal((Soil.Soiled, L(5)), (all.Of(K3).Soil, all.Of(K3).Heel));
        Assert.Equal((L(880), L(5), L(5)), Sums(all.Of(Batch118).Litres));
        Assert.Equal(Day(21), all.Of(Batch118).Closed?.At);
    }

    [Fact]
    public void Beer_that_still_falls_is_cautioned() =>
        Assert.Equal(
            Level.Caution,
            Finished.And(Gravity(1.008).On(12)).Says(Kegged(300).On(12)).LevelOf("gravity-not-stable")
        );

    [Fact]
    public void A_stuck_beer_is_stable_and_above_its_limit()
    {
        var verdict = Finished.Where(Batch118 with { LimitOfAttenuation = Sg20(1.006) }).Says(Kegged(300).On(20));

        Assert.Equal(
            Objection.Caution("above-limit", new("batch", 118), new("gravity", Sg20(1.010)), new("limit", Sg20(1.006))),
            verdict.About("above-limit")
        );
        Assert.Null(verdict.About("gravity-not-stable"));
    }

    [Fact]
    public void A_limit_nobody_knows_is_said() =>
        Assert.Equal(
            Level.Caution,
            Finished
                .Where(Batch118 with { LimitOfAttenuation = null })
                .Says(Kegged(300).On(20))
                .LevelOf("limit-unknown")
        );

    [Fact]
    public void Beer_dry_hopped_on_its_yeast_is_cautioned_into_kegs_and_stopped_from_bottles()
    {
        Assert.Equal(Level.Caution, Creeping.Says(Kegged(300).On(13)).LevelOf("hop-creep"));
        Assert.Equal(Level.Stop, Creeping.Says(Bottled(300).On(13)).LevelOf("hop-creep-sealed"));
        Assert.Null(Creeping.Says(Bottled(300).On(13)).About("hop-creep"));
    }

    [Theory]
    [InlineData(12.5, 14.5, false)] // 48 h apart, both after the hops
    [InlineData(11.5, 13.5, true)] // the first one was before them
    public void It_creeps_no_more_when_found_stable_after_the_hops(double first, double second, bool isStopped)
    {
        LogEntry[] log = [Gravity(1.010).On(first), Gravity(1.010).On(second), DryHopped().On(12)];
        var floor = After([
            FilledAt(1.050).On(0),
            Pitched().On(0, hour: 10),
            Gravity(1.010).On(9),
            .. log.OrderBy(entry => entry.At),
        ]);

        Assert.Equal(isStopped, floor.Says(Bottled(300).On(15)).LevelOf("hop-creep-sealed") is Level.Stop);
    }

    [Fact]
    public void Hops_that_met_no_yeast_creep_no_more()
    {
        Assert.Null(Finished.And(DryHopped().On(12)).Says(Bottled(300).On(13)).About("hop-creep-sealed"));

        var racked = After(FilledAt(1.050).On(0), Pitched().On(0, hour: 10), Racked(880, left: 20).On(9));
        Assert.Null(racked.And(DryHopped(tank: B1).On(12)).Says(Bottled(300, B1).On(13)).About("hop-creep-sealed"));
    }

    [Fact]
    public void Yeast_dumped_after_the_hops_went_in_had_met_them() =>
        Assert.Equal(
            Level.Stop,
            Creeping.And(Dumped(Sediment.Yeast).On(13)).Says(Bottled(300).On(13)).LevelOf("hop-creep-sealed")
        );

    [Fact]
    public void Unpurged_containers_are_cautioned() =>
        Assert.Equal(
            Level.Caution,
            Finished.Says((Kegged(300) with { IsPurged = false }).On(20)).LevelOf("containers-not-purged")
        );

    [Theory]
    [InlineData(917, null)] // 890 L booked after the yeast, 27 L of error
    [InlineData(917.1, Level.Impossible)]
    public void More_out_than_in_is_impossible_beyond_measuring_error(double litres, Level? level) =>
        Assert.Equal(level, Finished.Says(Kegged(litres).Rest().On(20)).LevelOf("more-out-than-in"));

    [Fact]
    public void Every_caution_and_stop_at_once_in_the_order_of_fixing() =>
        Assert.Equal(
            [
                "hop-creep-sealed",
                "gravity-not-stable",
                "limit-unknown",
                "containers-not-purged",
                "beer-missing",
                "large-heel",
            ],
            After(Filled().On(0), Pitched().On(1), DryHopped().On(2))
                .Where(Batch118 with { LimitOfAttenuation = null })
                .Says((Bottled(300).Rest(heel: 10) with { IsPurged = false }).On(3))
                .Codes()
        );

    private static (UnitsNet.Volume, UnitsNet.Volume, UnitsNet.Volume) Sums(Litres litres) =>
        (litres.Packaged, litres.Left, litres.MeasuringDifference);
}
