using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
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

    [Fact]
    public void Fresh_cold_slurry_goes_in_without_a_word() =>
        Assert.Empty(Says(TheFloor().After(On(0, Fridge(Slurry, 1)))));

    [Fact]
    public void No_yeast_goes_into_a_tank_that_does_not_hold_the_batch() =>
        Assert.Equal(["no-such-beer"], Says(TheFloor(new TankState(K3.Id)).After(On(0, Fridge(Slurry, 1)))));

    [Theory]
    [InlineData(1100, 0)] // a tenth more than the jar held: foam was read as yeast
    [InlineData(1101, 1)]
    public void More_than_is_left_is_impossible_beyond_measuring_error(double ml, int objections) =>
        Assert.Equal(
            Enumerable.Repeat("more-yeast-than-left", objections),
            Says(TheFloor().After(On(0, Fridge(Slurry, 1, ml: 1000))), Pitched((Slurry, Ml(ml))))
        );

    [Fact]
    public void The_error_is_not_granted_twice() =>
        Assert.Equal(
            ["more-yeast-than-left"],
            Says(
                TheFloor().After(On(0, Fridge(Slurry, 1, ml: 1000)), On(1, Pitched((Slurry, Ml(1100))))),
                Pitched((Slurry, Ml(1)))
            )
        );

    [Fact]
    public void A_jar_poured_away_cannot_be_pitched() =>
        Assert.Contains(
            "culture-discarded",
            Says(
                TheFloor().After(On(0, Fridge(Slurry, 1)), On(0.5, new CultureDiscarded(Slurry.Id, "smelt of rubber")))
            )
        );

    [Fact]
    public void Slurry_is_not_weighed_and_a_pack_is_not_poured()
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1)), On(0, Received(Pack, Grams(11.5))));

        Assert.Equal(["wrong-measure"], Says(floor, Pitched((Slurry, Grams(400)))));
        Assert.Equal(["wrong-measure"], Says(floor, Pitched((Pack, Ml(10)))));
    }

    [Fact]
    public void Pitching_nothing_is_impossible()
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1)));

        Assert.Equal(["no-yeast"], Says(floor, Pitched((Slurry, Ml(0)))));
        Assert.Equal(["no-yeast"], Says(floor, Pitched()));
        Assert.Empty(Says(floor, Pitched() with { Words = "two cups from next door" }));
    }

    [Theory]
    [InlineData(4, null, false)] // four days are still fresh
    [InlineData(4.01, null, true)]
    [InlineData(9, 4.9, true)] // a count from longer ago says nothing
    [InlineData(9, 5.0, false)]
    public void Older_slurry_wants_a_count(double day, double? counted, bool isCautioned)
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1)));
        floor = counted is { } on ? floor.After(On(on, new Counted(Slurry.Id, 4, 100, 380, 20))) : floor;

        Assert.Equal(isCautioned ? ["yeast-not-counted"] : [], Says(floor, Pitched((Slurry, Ml(400))), day));
    }

    [Theory]
    [InlineData(5.0, false)]
    [InlineData(5.1, true)]
    public void Slurry_kept_warm_wants_a_count(double celsius, bool isCautioned) =>
        Assert.Equal(
            isCautioned ? ["yeast-kept-warm"] : [],
            Says(TheFloor().After(On(0, Fridge(Slurry, 1) with { StoredAt = Celsius(celsius) })))
        );

    [Theory]
    [InlineData(1.070, 1.018, false)]
    [InlineData(1.090, 1.018, true)] // 9.7 % v/v
    public void Slurry_out_of_strong_beer_wants_a_count(double original, double gravity, bool isCautioned)
    {
        var beer = Wort(original) with { Gravities = [new(default, K3.Id, Sg(gravity))] };
        var floor = TheFloor(batch: beer).After(On(0, Harvested((Slurry, 1000))));

        Assert.Equal(isCautioned ? ["yeast-from-strong-beer"] : [], Says(floor));
    }

    [Fact]
    public void A_dry_pack_is_asked_for_no_count() =>
        Assert.Empty(
            Says(
                TheFloor().After(On(0, Received(Pack, Grams(11.5)) with { StoredAt = Celsius(12) })),
                Pitched((Pack, Grams(11.5))),
                day: 60
            )
        );

    private static IEnumerable<string> Says(Floor floor, Pitched? pitched = null, double day = 1) =>
        On(day, pitched ?? Pitched((Slurry, Ml(400)))).JudgedOn(floor).Codes();
}
