using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class CarriedTests
{
    private static readonly Moment Before = new(Day(-9), Guid.Empty);

    private static readonly Exposure Mixed = new(Before, ExposureKind.MixedCulture, "wild saison");

    private static readonly Floor Wild = NewFloor.Standing(K3, tank => tank with { ExposedTo = [Mixed] });

    [Fact]
    public void An_allergen_in_the_wort_is_met_by_the_batch_and_the_tank()
    {
        var floor = After(Filled().With("lactose").On(0));

        Assert.Equal(["lactose"], floor.Of(Batch118).Allergens);
        Assert.Equal(
            (ExposureKind.Allergen, "lactose", Batch118.Id),
            floor.Of(K3).ExposedTo is [var met] ? (met.Kind, met.What, met.BatchId!.Value) : default
        );
    }

    [Fact]
    public void Beer_from_a_tank_that_met_a_mixed_culture_has_it_and_brings_it_along()
    {
        var floor = Wild.And(Filled().On(0));

        Assert.True(floor.Of(Batch118).HasMixedCulture);
        Assert.Equal(ExposureKind.MixedCulture, Assert.Single(floor.And(Racked(880).On(9)).Of(B1).ExposedTo).Kind);
    }

    [Fact]
    public void A_tank_exposed_while_the_beer_stood_in_it_hands_it_on_when_racked()
    {
        var floor = After(Filled().On(0)).Standing(K3, tank => tank with { ExposedTo = [Mixed] });
        var racked = floor.And(Racked(880).On(9));

        Assert.False(floor.Of(Batch118).HasMixedCulture);
        Assert.True(racked.Of(Batch118).HasMixedCulture);
        Assert.Single(racked.Of(B1).ExposedTo);
    }

    [Fact]
    public void Beer_racked_into_an_exposed_tank_has_it_too() =>
        Assert.True(
            After(Filled().On(0))
                .Standing(B1, tank => tank with { ExposedTo = [Mixed] })
                .And(Racked(880).On(9))
                .Of(Batch118)
                .HasMixedCulture
        );

    [Fact]
    public void A_cleared_tank_hands_nothing_on()
    {
        var cleared = Mixed with { SoftPartsRenewed = true, Washes = 2, Inspected = true };
        var floor = NewFloor.Standing(K3, tank => tank with { ExposedTo = [cleared] }).And(Filled().On(0));

        Assert.False(floor.Of(Batch118).HasMixedCulture);
    }

    [Fact]
    public void A_second_tank_of_the_batch_meets_what_the_first_one_brought() =>
        Assert.Equal(
            "lactose",
            Assert.Single(After(Filled().With("lactose").On(0), Filled(400, P2).On(0)).Of(P2).ExposedTo).What
        );

    [Fact]
    public void Meeting_it_again_begins_the_clearing_anew()
    {
        var washed = new Exposure(Before, ExposureKind.Allergen, "lactose") { Washes = 2, SoftPartsRenewed = true };
        var floor = NewFloor.Standing(K3, tank => tank with { ExposedTo = [washed] });

        var met = Assert.Single(floor.And(Filled().With("lactose").On(0)).Of(K3).ExposedTo);

        Assert.Equal((Day(0), 0, false), (met.Moment.At, met.Washes, met.SoftPartsRenewed));
    }

    [Fact]
    public void Plain_beer_in_a_plain_tank_exposes_nothing() =>
        Assert.Empty(After(Filled().On(0), Racked(880).On(9)).Of(B1).ExposedTo);
}
