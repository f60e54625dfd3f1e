using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Yeast;
using CsCheck;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Yeast;

public class PitchTests
{
    [Theory] // common practice
    [Check("YE-03")]
    public void A_million_a_millilitre_and_degree(Check check)
    {
        (check with { Tolerance = "0" }).Agrees(Pitch.CellsFor(PitchRate.Ale, Plato(12), Litres(100)).Value.Count);
    }

    [Theory]
    [Check("YE-04")]
    public void The_slurry_for_it(Check check) =>
        check.Agrees(Pitch.SlurryFor(new(1.2e12), new(1.2e9), Percent(92)).Value.Liters);

    [Theory] // Suihko, Vilpola, Linko 1993
    [Check("YE-09")]
    public void A_published_rate_is_twice_the_usual(Check check) =>
        (check with { Tolerance = "0" }).Agrees(
            PitchRate.Published.PerMillilitreAndPlato,
            PitchRate.PublishedWet.GramsPerLiter
        );

    [Theory] // the same
    [Check("YE-21")]
    public void In_strong_wort_more_yet(Check check) =>
        (check with { Tolerance = "0" }).Agrees(PitchRate.PublishedStrong.PerMillilitreAndPlato / 1e6);

    [Theory] // common practice
    [Check("YE-26")]
    public void A_slurry_nobody_measured_is_anybodys_guess(Check check)
    {
        var slurry = SlurryDensity.Unmeasured;

        check.Agrees([.. new[] { slurry.Likely, slurry.Low, slurry.High }.Select(d => d.PerMillilitre / 1e9)]);
        Assert.False(slurry.IsMeasured);
    }

    [Theory] // arithmetic
    [Check("YE-29")]
    public void Spun_solids_are_packed_cells(Check check)
    {
        var spun = SlurryDensity.Spun(Percent(check.Given("solids")), new(3.5e9)).Value;

        check.Agrees([.. new[] { spun.Likely, spun.Low, spun.High }.Select(d => d.PerMillilitre / 1e9)]);
    }

    [Fact]
    public void The_slurry_for_cells_holds_those_cells() =>
        Gen.Select(Gen.Double[1e9, 1e15], Gen.Double[1e8, 5e9], Gen.Double[1, 100])
            .Sample(
                (cells, density, living) =>
                {
                    var slurry = Pitch.SlurryFor(new(cells), new(density), Percent(living)).Value;
                    var back = Pitch.LivingIn(slurry, new(density), Percent(living)).Value;
                    Assert.Equal(cells, back.Count, cells * 1e-12);
                }
            );

    [Fact]
    public void The_rate_of_a_pitch_is_the_rate_it_was_made_for() =>
        Gen.Select(Gen.Double[1e5, 5e6], Gen.Double[1, 40], Gen.Double[1, 10_000])
            .Sample(
                (rate, wort, litres) =>
                {
                    var cells = Pitch.CellsFor(new(rate), Plato(wort), Litres(litres)).Value;
                    var back = Pitch.RateOf(cells, Plato(wort), Litres(litres)).Value;
                    Assert.Equal(rate, back.PerMillilitreAndPlato, rate * 1e-12);
                }
            );

    [Fact]
    public void Spun_solids_give_a_density_inside_what_any_strain_packs_to()
    {
        var slurry = SlurryDensity.Spun(Percent(40), new(3e9)).Value;

        Assert.Equal(
            (1.2e9, 1e9, 2e9),
            (slurry.Likely.PerMillilitre, slurry.Low.PerMillilitre, slurry.High.PerMillilitre)
        );
        Assert.True(slurry.IsMeasured);
        Assert.Equal("solids", SlurryDensity.Spun(Percent(101), new(3e9)).Refusal?.What);
        Assert.Equal("packed", SlurryDensity.Spun(Percent(40), new(6e9)).Refusal?.What);
    }

    [Fact]
    public void A_counted_slurry_is_known_within_its_error()
    {
        var slurry = SlurryDensity.Counted(new YeastCount(new(1e9), Percent(5), Percent(10)));

        Assert.Equal((0.9e9, 1.1e9), (slurry.Low.PerMillilitre, Math.Round(slurry.High.PerMillilitre)));
        Assert.True(slurry.Low < slurry.Likely && slurry.High > slurry.Likely);
        Assert.True(slurry.Low <= slurry.Likely && slurry.High >= slurry.Likely);
    }

    [Theory] // Balling
    [Check("YE-27")]
    public void New_yeast_is_bounded_by_the_extract(Check check)
    {
        var done = new Fermented(Kg(100), Kg(95), Kg(1), Balling.YieldOf(Kg(1)));
        var growth = Growth.Of(new(1e12), done).Value;

        check.Agrees(growth.DryYeast.Kilograms);
        Assert.Equal((4e12, 8e12), (growth.Low.Count, growth.High.Count));
        Assert.Equal((3e12, 5e12), (growth.CropLow.Count, growth.CropHigh.Count));
        Assert.Equal("cells", Growth.Of(new(-1), done).Refusal?.What);
    }

    [Fact]
    public void A_pitch_that_cannot_be_is_refused()
    {
        Assert.Equal("pitch-rate", Pitch.CellsFor(new(0), Plato(12), Litres(1)).Refusal?.What);
        Assert.Equal("original-extract", Pitch.CellsFor(PitchRate.Lager, Plato(41), Litres(1)).Refusal?.What);
        Assert.Equal("volume", Pitch.CellsFor(PitchRate.Lager, Plato(12), Litres(-1)).Refusal?.What);
        Assert.Equal("cells", Pitch.SlurryFor(new(-1), new(1e9), Percent(90)).Refusal?.What);
        Assert.Equal("cell-density", Pitch.SlurryFor(new(1), new(1e10), Percent(90)).Refusal?.What);
        Assert.Equal(OutOfRange("viability", "1", "100", "%"), Pitch.SlurryFor(new(1), new(1e9), Percent(0)).Refusal);
        Assert.Equal("viability", Pitch.LivingIn(Litres(1), new(1e9), Percent(101)).Refusal?.What);
        Assert.Equal("volume", Pitch.RateOf(new(1), Plato(12), Litres(0)).Refusal?.What);
    }
}
