using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tests.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

/// <summary>Dumping, dry hopping, discarding.</summary>
public class SedimentTests
{
    private static readonly Floor Full = After(FilledAt(1.050).On(0), Pitched().On(0, hour: 10));

    [Fact]
    public void What_is_dumped_leaves_the_books()
    {
        var floor = Full.And(Dumped(Sediment.Trub, 12).On(1));

        Assert.Equal((L(888), L(12)), (floor.Of(K3).Contents.Volume, floor.Of(Batch118).Litres.Dumped));
        Assert.Equal(Sediment.Trub, Assert.Single(floor.Of(Batch118).Dumps).What);
    }

    [Fact]
    public void A_dump_nobody_measured_is_a_dump()
    {
        Assert.Null(Full.Says(Dumped(Sediment.Trub, 0).On(5)).About("no-volume"));
        Assert.Equal(Level.Impossible, Full.Says(Dumped(Sediment.Trub, -1).On(5)).LevelOf("no-volume"));
    }

    [Fact]
    public void Nothing_is_dumped_while_it_ferments_hard()
    {
        Assert.Equal(Level.Caution, Full.Says(Dumped(Sediment.Trub).On(1)).LevelOf("fermenting-hard"));
        Assert.Null(Full.Says(Dumped(Sediment.Trub).On(0, hour: 20)).About("fermenting-hard")); // 10 h after the yeast
    }

    [Theory]
    [InlineData(Sediment.Hops, 20, Level.Caution)]
    [InlineData(Sediment.Hops, 0, null)]
    [InlineData(Sediment.Yeast, 20, null)]
    public void Hops_at_the_outlet_come_out_all_at_once_under_pressure(Sediment what, double pressure, Level? level) =>
        Assert.Equal(
            level,
            Full.Standing(K3, t => BeerTests.Sealed(t, pressure))
                .Says(Dumped(what).On(9))
                .LevelOf("hops-under-pressure")
        );

    [Fact]
    public void Dumped_hops_are_out_of_the_beer()
    {
        var batch = Full.And(DryHopped().On(7), Dumped(Sediment.Yeast).On(8), Dumped(Sediment.Hops).On(10))
            .Of(Batch118);

        Assert.Equal(Day(10), Assert.Single(batch.DryHops).OutAt);
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(0.5, Level.HardStop)]
    [InlineData(80, Level.HardStop)]
    public void Hops_through_an_opening_under_pressure_are_a_hard_stop(double pressure, Level? level) =>
        Assert.Equal(
            level,
            Full.Standing(K3, t => BeerTests.Sealed(t, pressure)).Says(DryHopped().On(9)).LevelOf("hops-into-pressure")
        );

    [Fact]
    public void A_pressure_nobody_knows_counts_as_pressure() =>
        Assert.Equal(
            Level.HardStop,
            Full.Standing(K3, t => BeerTests.Sealed(t, 0) with { IsPressureInDoubt = true })
                .Says(DryHopped().On(9))
                .LevelOf("hops-pressure-unknown")
        );

    [Fact]
    public void Hops_through_a_closed_equalised_port_are_cautioned() =>
        Assert.Equal(
            ["hops-through-port"],
            Full.And(Dumped(Sediment.Yeast).On(8))
                .Standing(K3, t => BeerTests.Sealed(t, 80))
                .Says(DryHopped(HopWay.ThroughEqualisedPort).On(9))
                .Codes()
        );

    [Fact]
    public void Hops_on_yeast_are_cautioned_unless_the_plan_says_so_or_it_is_out()
    {
        var planned = Batch118 with { DryHopsDuringFermentation = true };

        Assert.Equal(Level.Caution, Full.Says(DryHopped().On(9)).LevelOf("hops-on-yeast"));
        Assert.Null(Full.Where(planned).Says(DryHopped().On(9)).About("hops-on-yeast"));
        Assert.Null(Full.And(Dumped(Sediment.Yeast).On(8)).Says(DryHopped().On(9)).About("hops-on-yeast"));
        Assert.Null(After(Filled().On(0)).Says(DryHopped().On(1)).About("hops-on-yeast")); // none was pitched
    }

    [Fact]
    public void Trub_that_was_dumped_is_not_yeast() =>
        Assert.Equal(
            Level.Caution,
            Full.And(Dumped(Sediment.Trub).On(5)).Says(DryHopped().On(9)).LevelOf("hops-on-yeast")
        );

    [Fact]
    public void Beer_taken_over_has_its_yeast_in_it() =>
        Assert.Equal(Level.Caution, After(BatchTakenOver(900).On(0)).Says(DryHopped().On(1)).LevelOf("hops-on-yeast"));

    [Fact]
    public void Part_poured_away_leaves_the_rest_in_use()
    {
        var floor = Full.And(Discarded(20).On(5));

        Assert.Equal((L(880), L(20)), (floor.Of(K3).Contents.Volume, floor.Of(Batch118).Litres.Discarded));
        Assert.Null(floor.Of(Batch118).Discarded);
    }

    [Fact]
    public void All_poured_away_empties_the_tank_and_closes_the_batch()
    {
        var floor = Full.And(Discarded(900, rest: true).On(5));

        Assert.Equal(Domain.Tanks.Holding.Nothing, floor.Of(K3).Contents.What);
        Assert.Equal((Day(5), Day(5)), (floor.Of(Batch118).Discarded?.At, floor.Of(Batch118).Closed?.At));
    }
}
