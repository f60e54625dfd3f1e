using BrewFloor.Domain.Batches;
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

    private static readonly BatchState Good = Wort() with
    {
        InTanks = [new(K3.Id, Litres(100), new(Day(0), Guid.CreateVersion7())) { IsWort = true, CameIn = Litres(100) }],
        Pitches = [new(new(Day(0), default), Slurry.Id, Ml(400), Generation: 7, IsAtLeast: false)],
        Dumps = [new(new(Day(1), default), K3.Id, Sediment.Trub, Litres(1))],
        Gravities = [Read(7, 1.010), Read(9, 1.010)],
    };

    [Fact]
    public void A_clean_crop_at_the_end_is_taken_without_a_word() => Assert.Empty(Says(Good));

    [Fact]
    public void Yeast_comes_out_of_a_tank_that_holds_the_batch() =>
        Assert.Equal(["no-such-beer"], On(9, Harvested((Second, 1500))).JudgedOn(TheFloor(new(K3.Id), Good)).Codes());

    [Fact]
    public void A_crop_of_nothing_is_none()
    {
        Assert.Equal(["no-yeast"], Says(Good, Harvested()));
        Assert.Equal(["no-yeast"], Says(Good, Harvested((Second, 0))));
    }

    [Fact]
    public void One_jar_is_filled_once()
    {
        var floor = TheFloor(batch: Good).After(On(8, Fridge(Second, 1)));

        Assert.Equal(["culture-already-here"], On(9, Harvested((Second, 1500))).JudgedOn(floor).Codes());
    }

    [Theory]
    [InlineData(103_000, new string[0])] // 3 L is what a measuring may be off by
    [InlineData(103_100, new[] { "more-out-than-in" })]
    public void No_more_comes_out_than_is_in(double ml, string[] codes) =>
        Assert.Equal(codes, Says(Good, Harvested((Second, ml))));

    [Theory]
    [InlineData(HarvestedFrom.Cone, new[] { "trub-not-dumped" })]
    [InlineData(HarvestedFrom.Top, new string[0])] // trub lies at the bottom
    public void A_cone_crop_wants_the_trub_out_first(HarvestedFrom from, string[] codes) =>
        Assert.Equal(codes, Says(Good with { Dumps = [] }, Harvested((Second, 1500)) with { From = from }));

    [Theory] // 1.075 is 18.2 °P
    [InlineData(1.075, 1.020, new string[0])] // 7.2 % v/v
    [InlineData(1.076, 1.024, new[] { "strong-wort" })] // 6.8 % v/v
    [InlineData(1.075, 1.012, new[] { "strong-beer" })] // 8.2 % v/v
    public void Strong_wort_and_strong_beer_tire_the_yeast(double original, double gravity, string[] codes) =>
        Assert.Equal(
            codes,
            Says(
                Good with
                {
                    OriginalGravity = Sg(original),
                    Pitches = [],
                    Gravities = [Read(7, gravity), Read(9, gravity)],
                }
            )
        );

    [Theory]
    [InlineData(7, new string[0])] // the crop is generation 8, the last one that is pitched
    [InlineData(8, new[] { "generation-limit" })]
    public void A_crop_beyond_the_last_generation_is_cautioned(int pitched, string[] codes) =>
        Assert.Equal(codes, Says(Good with { Pitches = [Good.Pitches[0] with { Generation = pitched }] }));

    [Theory]
    [InlineData(11, new string[0])]
    [InlineData(11.01, new[] { "harvest-late" })]
    public void Two_days_after_the_end_is_late(double day, string[] codes) => Assert.Equal(codes, Says(Good, day: day));

    [Fact]
    public void Hops_and_wild_yeast_go_with_the_crop()
    {
        DryHop hop = new(new(Day(5), default), K3.Id, "Pellets", Mass.FromGrams(300), null);

        Assert.Equal(["yeast-hopped"], Says(Good with { DryHops = [hop] }));
        Assert.Equal(["yeast-exposed"], Says(Good with { HasMixedCulture = true }));
    }

    private static GravityFact Read(double day, double gravity) => new(new(Day(day), default), K3.Id, Sg(gravity));

    private static IEnumerable<string> Says(BatchState beer, Harvested? harvested = null, double day = 9)
    {
        var floor = TheFloor(batch: beer);
        floor = floor with { Batches = [(Batch118 with { LimitOfAttenuation = Sg(1.010) }, beer)] };
        return On(day, harvested ?? Harvested((Second, 1500))).JudgedOn(floor).Codes();
    }
}
