using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Yeast;
using UnitsNet;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Yeast;

public class HarvestedTests
{
    [Theory]
    [InlineData(0, 1)] // a fresh pack's first crop
    [InlineData(5, 6)]
    public void A_crop_is_one_generation_above_its_pitch(int pitched, int cropped)
    {
        var jar = TheFloor()
            .After(On(0, Fridge(Slurry, pitched)), On(1, Pitched((Slurry, Ml(400)))), On(9, Harvested((Second, 1500))))
            .Of(Second);

        Assert.Equal((cropped, true, Slurry.Id), (jar.Generation, jar.IsGenerationAtLeast, Assert.Single(jar.Parents)));
    }

    [Fact]
    public void Of_two_cultures_pitched_together_the_crop_takes_the_older_ones_generation()
    {
        var jar = TheFloor()
            .After(On(0, Received(Pack, Grams(23))), On(0, Fridge(Slurry, 4)))
            .After(On(1, Pitched((Pack, Grams(11.5)), (Slurry, Ml(400)))), On(9, Harvested((Second, 1500))))
            .Of(Second);

        Assert.Equal(5, jar.Generation);
        Assert.Equal([Pack.Id, Slurry.Id], jar.Parents);
    }

    [Fact]
    public void A_crop_of_a_received_pack_is_exactly_generation_1() =>
        Assert.False(
            TheFloor()
                .After(
                    On(0, Received(Pack, Grams(23))),
                    On(1, Pitched((Pack, Grams(23)))),
                    On(9, Harvested((Second, 1500)))
                )
                .Of(Second)
                .IsGenerationAtLeast
        );

    [Fact]
    public void A_crop_of_a_batch_nobody_saw_pitched_is_generation_1_at_least()
    {
        var jar = TheFloor().After(On(9, Harvested((Second, 1500)))).Of(Second);

        Assert.Equal((1, true), (jar.Generation, jar.IsGenerationAtLeast));
    }

    [Fact]
    public void The_jar_keeps_the_beer_it_came_from_as_it_stood_then()
    {
        var beer = Wort(og: 1.061) with { DryHops = [new(default, K3.Id, "Any", Mass.FromGrams(300), null)] };

        var jar = TheFloor(batch: beer).After(On(9, Harvested((Second, 1500)))).Of(Second);

        Assert.Equal(new Source(Batch118.Id, K3.Id, Sg(1.061), null, IsHopped: true), jar.From);
        Assert.Equal((Ml(1500), Celsius(3)), (jar.Amount, jar.StoredAt));
    }

    [Fact]
    public void What_is_harvested_leaves_the_tank_and_the_batchs_account()
    {
        var floor = TheFloor().After(On(9, Harvested((Slurry, 500), (Second, 1500))));

        Assert.Equal(
            (Litres(98), Litres(98), Litres(2)),
            (floor.Vessel().Contents.Volume, floor.Beer().InTanks[0].Volume, floor.Beer().Litres.Harvested)
        );
    }

    [Theory]
    [InlineData(ExposureKind.MixedCulture, true)]
    [InlineData(ExposureKind.Allergen, false)] // the yeast carries no nuts
    public void Yeast_out_of_a_tank_that_met_a_mixed_culture_is_under_trace(ExposureKind kind, bool isExposed) =>
        Assert.Equal(
            isExposed,
            TheFloor(WithBeer() with { ExposedTo = [new(default, kind, "")] })
                .After(On(9, Harvested((Second, 1500))))
                .Of(Second)
                .IsExposed
        );

    [Fact]
    public void Yeast_of_a_mixed_beer_is_under_trace() =>
        Assert.True(
            TheFloor(batch: Wort() with { HasMixedCulture = true })
                .After(On(9, Harvested((Second, 1500))))
                .Of(Second)
                .IsExposed
        );
}
