using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class StagesTests
{
    private static readonly Floor Fermenting = After(FilledAt(1.050).On(0), Pitched().On(0, hour: 10));

    private static readonly Floor Finished = Fermenting.And(Gravity(1.010).On(9), Gravity(1.010).On(11));

    [Fact]
    public void A_batch_goes_its_way_from_the_plan_to_the_last_keg()
    {
        Assert.Equal(Stage.Planned, StageOf(After(FillPlanned(3).On(0))));
        Assert.Equal(Stage.Filled, StageOf(After(Filled().On(0))));
        Assert.Equal(Stage.Fermenting, StageOf(Fermenting));
        Assert.Equal(Stage.Finished, StageOf(Finished));
        Assert.Equal(Stage.Cold, StageOf(Finished.And(SetTo(2).On(12), Read(2).On(13))));
        Assert.Equal(Stage.Packaged, StageOf(Finished.And(Kegged(880).Rest(heel: 9).On(20))));
    }

    [Fact]
    public void Part_of_it_packaged_is_not_packaged() =>
        Assert.Equal(Stage.Finished, StageOf(Finished.And(Kegged(300).On(20))));

    [Fact]
    public void Poured_away_is_discarded_but_not_when_some_was_packaged()
    {
        Assert.Equal(Stage.Discarded, StageOf(Finished.And(Discarded(900, rest: true).On(20))));
        Assert.Equal(Stage.Packaged, StageOf(Finished.And(Kegged(300).On(20), Discarded(600, rest: true).On(21))));
        Assert.Equal(Stage.Finished, StageOf(Finished.And(Discarded(5).On(20))));
    }

    [Fact]
    public void Beer_taken_over_ferments_when_its_gravity_has_fallen()
    {
        var known = BatchTakenOver(900) with
        {
            NewBatch = new(Batch118.Id, "Harvest Ale", "Pale ale", BeerKind.Ale) { OriginalGravity = Sg20(1.050) },
        };

        Assert.Equal(Stage.Filled, StageOf(After(known.On(0))));
        Assert.Equal(Stage.Fermenting, StageOf(After((known with { Gravity = Sg(1.030) }).On(0))));
    }

    [Theory]
    [InlineData(1.050, 0)]
    [InlineData(1.030, 0.49)] // 12.39 °P, 7.55 °P, 2.56 °P: 4.84 of 9.83
    [InlineData(1.010, 1)]
    [InlineData(1.008, 1)] // not more than all of it
    [InlineData(1.052, 0)] // not less than nothing
    public void How_far_is_the_share_of_the_fall_to_the_limit(double gravity, double share) =>
        Assert.Equal(share, Fermenting.And(Gravity(gravity).On(4)).Of(Batch118).HowFar(Batch118)!.Value, 0.005);

    [Fact]
    public void Without_a_limit_or_a_gravity_nobody_knows_how_far()
    {
        Assert.Null(Fermenting.Of(Batch118).HowFar(Batch118 with { LimitOfAttenuation = null }));
        Assert.Null(After(Filled().On(0), Gravity(1.030).On(4)).Of(Batch118).HowFar(Batch118));
        Assert.Null(After(Filled().On(0)).Of(Batch118).HowFar(Batch118));
    }

    [Fact]
    public void Strength_is_worked_out_from_the_gravities()
    {
        // check EX-12: 12.0 °P to 2.5 °P is 5.07 % by volume
        var batch = After(FilledAt(1.04836).On(0), Gravity(1.00977).On(9)).Of(Batch118);

        Assert.Equal(5.07, Strength.Of(batch)!.Value.Value.AlcoholByVolume.Percent, 0.01);
        Assert.Null(Strength.Of(After(Filled().On(0), Gravity(1.010).On(9)).Of(Batch118)));
    }

    private static Stage StageOf(Floor floor) => floor.Of(Batch118).StageOf(Batch118, Rules);
}
