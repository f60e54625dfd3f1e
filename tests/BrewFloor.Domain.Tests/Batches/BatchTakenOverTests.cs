using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class BatchTakenOverTests
{
    private static readonly BatchTakenOver AsFound = BatchTakenOver(900) with
    {
        FilledAt = Day(-6),
        PitchedAt = Day(-5.5),
        Generation = 3,
        Gravity = Sg(1.020),
    };

    [Fact]
    public void Beer_found_in_a_tank_is_as_old_as_it_is()
    {
        var floor = After(AsFound.On(0));
        var batch = floor.Of(Batch118);

        Assert.Equal((Day(-6), true), (batch.Filled?.At, batch.IsTakenOver));
        Assert.Equal((Batch118.Id, L(900)), (floor.Of(K3).BatchId, floor.Of(K3).Contents.Volume));
        Assert.Equal((Day(-5.5), 3, true), Yeast(batch));
        Assert.Equal(Sg20(1.020), Assert.Single(batch.Gravities).Gravity);
    }

    [Fact]
    public void Over_beer_with_yeast_in_it_stands_carbon_dioxide()
    {
        Assert.Equal(Gas.CarbonDioxide, After(AsFound.On(0)).Of(K3).Gas);
        Assert.Equal(Gas.Air, After(BatchTakenOver(900).On(0)).Of(K3).Gas);
    }

    [Fact]
    public void Beer_is_not_found_in_a_full_tank_nor_a_batch_that_is_known()
    {
        Assert.Equal(["tank-occupied"], After(Filled(batch: Batch119).On(0)).Says(AsFound.On(1)).Codes());
        Assert.Equal(["batch-known"], After(Filled(tank: P2).On(0)).Says(AsFound.On(1)).Codes());
    }

    [Fact]
    public void It_was_filled_and_pitched_before_it_was_taken_over() =>
        Assert.Equal(
            ["after-taking-over", "after-taking-over"],
            NewFloor.Says((AsFound with { FilledAt = Day(1), PitchedAt = Day(2) }).On(0)).Codes()
        );

    [Fact]
    public void More_than_the_tank_holds_is_impossible() =>
        Assert.Equal(["over-total"], NewFloor.Says((AsFound with { Volume = L(1201) }).On(0)).Codes());

    private static (DateTimeOffset, int, bool) Yeast(BatchState batch) =>
        batch.Pitches is [var pitch] ? (pitch.Moment.At, pitch.Generation, pitch.IsAtLeast) : default;

    [Fact]
    public void Who_knows_the_generation_and_no_day_keeps_the_generation()
    {
        var batch = After((AsFound with { PitchedAt = null }).On(0)).Of(Batch118);

        Assert.Equal((Day(-6), 3, true), Yeast(batch));
        Assert.Empty(After(BatchTakenOver(900).On(0)).Of(Batch118).Pitches);
        Assert.Empty(After((AsFound with { PitchedAt = null, FilledAt = null }).On(0)).Of(Batch118).Pitches);
    }
}
