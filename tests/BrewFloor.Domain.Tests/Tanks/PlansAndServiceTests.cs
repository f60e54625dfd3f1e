using BrewFloor.Domain.Batches;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class PlansAndServiceTests
{
    [Fact]
    public void A_planned_fill_stands_on_the_tank_and_the_batch()
    {
        var floor = After(FillPlanned(5).On(0));

        Assert.Equal((Batch118.Id, Day(5), L(900)), Planned(floor));
        Assert.Equal(Day(0), floor.Of(Batch118).Planned?.At);
    }

    [Fact]
    public void A_plan_must_fit_the_tank_and_the_tank_may_still_be_full()
    {
        Assert.Equal(Level.Impossible, NewFloor.Says(FillPlanned(5, 1300).On(0)).LevelOf("over-total"));
        Assert.Empty(After(Filled(batch: Batch119).On(0)).Says(FillPlanned(5).On(1)).Objections);
    }

    [Fact]
    public void A_second_plan_for_one_tank_is_cautioned_unless_it_moves_the_first()
    {
        var floor = After(FillPlanned(5).On(0));

        Assert.Equal(Level.Caution, floor.Says(FillPlanned(6, batch: Batch119).On(1)).LevelOf("planned-already"));
        Assert.Empty(floor.Says(FillPlanned(6).On(1)).Objections);
    }

    [Fact]
    public void What_the_wort_is_planned_to_be_is_not_what_it_was()
    {
        var plan = FillPlanned(5) with
        {
            NewBatch = new(Batch118.Id, "Harvest Ale", "Pale ale", BeerKind.Ale)
            {
                OriginalGravity = Sg20(1.050),
                Allergens = ["lactose"],
            },
        };

        var batch = After(plan.On(0)).Of(Batch118);

        Assert.Null(batch.OriginalGravity);
        Assert.Equal(["lactose"], batch.Allergens);
    }

    [Fact]
    public void A_tank_is_out_of_service_until_it_is_put_back()
    {
        var floor = After(OutOfService().On(1));

        Assert.Equal(("weld cracked", Day(1)), (floor.Of(K3).OutOfService!.Why, floor.Of(K3).OutOfService!.Moment.At));
        Assert.Null(floor.And(BackInService().On(2)).Of(K3).OutOfService);
        Assert.Empty(floor.Says(BackInService().On(2)).Objections);
    }

    [Fact]
    public void A_tank_in_service_is_not_put_back() =>
        Assert.Equal(["not-out-of-service"], NewFloor.Says(BackInService().On(2)).Codes());

    private static (Guid, DateTimeOffset, UnitsNet.Volume)? Planned(Domain.Log.Floor floor) =>
        floor.Of(K3).Planned is { } planned ? (planned.BatchId, planned.At, planned.Volume) : null;
}
