using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Yeast;

public class PitchedTests
{
    [Fact]
    public void What_is_pitched_leaves_the_jar_and_the_jar_remembers_where_it_went()
    {
        var pitched = On(1, Pitched((Slurry, Ml(400))));

        var jar = TheFloor().After(On(0, Fridge(Slurry, 3)), pitched).Of(Slurry);

        Assert.Equal(Ml(600), jar.Amount);
        Assert.Equal([new(new(Day(1), pitched.Id), Batch118.Id, Ml(400))], jar.PitchedInto);
    }

    [Fact]
    public void A_batch_knows_each_culture_and_its_generation()
    {
        var floor = TheFloor()
            .After(On(0, Received(Pack, Grams(23))), On(0, Fridge(Slurry, 3)))
            .After(On(1, Pitched((Pack, Grams(11.5)), (Slurry, Ml(400)))));

        Assert.Equal(
            [(Pack.Id, 0, false), (Slurry.Id, 3, true)],
            floor.Beer().Pitches.Select(p => (p.CultureId!.Value, p.Generation, p.IsAtLeast))
        );
    }

    [Fact]
    public void One_jar_in_two_lines_is_one_pitch_of_both() =>
        Assert.Equal(
            [Ml(700)],
            TheFloor()
                .After(On(0, Fridge(Slurry, 3)), On(1, Pitched((Slurry, Ml(400)), (Slurry, Ml(300)))))
                .Beer()
                .Pitches.Select(p => p.Amount)
        );

    [Fact]
    public void Yeast_that_only_words_name_is_a_pitch_of_a_generation_nobody_knows()
    {
        var pitch = Assert.Single(
            TheFloor().After(On(1, Pitched() with { Words = "two cups from next door" })).Beer().Pitches
        );

        Assert.Equal((null, 0, true), (pitch.CultureId, pitch.Generation, pitch.IsAtLeast));
    }

    [Fact]
    public void A_pitched_tank_stands_under_carbon_dioxide() =>
        Assert.Equal(
            (Gas.Air, Gas.CarbonDioxide),
            (TheFloor().Vessel().Gas, TheFloor().After(On(1, Pitched((Slurry, Ml(400))))).Vessel().Gas)
        );

    [Theory]
    [InlineData(false)] // the control: clean yeast marks nothing
    [InlineData(true)]
    public void A_mixed_culture_marks_the_beer_and_the_tank(bool isMixed)
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 3, isMixed: isMixed)), On(1, Pitched((Slurry, Ml(400)))));

        Assert.Equal(isMixed, floor.Beer().HasMixedCulture);
        Assert.Equal(isMixed, floor.Vessel().ExposedTo.Any(e => e.Kind is ExposureKind.MixedCulture));
    }

    [Fact]
    public void A_second_exposure_starts_the_clearing_anew()
    {
        var cleared = WithBeer() with
        {
            ExposedTo = [new(default, ExposureKind.MixedCulture, "") { Washes = 2, SoftPartsRenewed = true }],
        };

        var exposure = Assert.Single(
            TheFloor(cleared)
                .After(On(0, Fridge(Slurry, 1, isMixed: true)), On(1, Pitched((Slurry, Ml(400)))))
                .Vessel()
                .ExposedTo
        );

        Assert.Equal((0, false), (exposure.Washes, exposure.SoftPartsRenewed));
    }
}
