using BrewFloor.Brewing.Yeast;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Yeast;

public class YeastKeepingTests
{
    private static ViabilityRange Guess(double percent) => new(Percent(percent), Percent(percent), Percent(percent));

    [Theory] // McCaig & Bendiak 1985
    [Check("YE-06")]
    public void Six_days_in_the_cold_as_published(Check check)
    {
        var (one, five) = (YeastKeeping.SixDays[0], YeastKeeping.SixDays[1]);

        Assert.Equal(
            FormattableString.Invariant(
                $"viability drop {one.ViabilityLost.Percent} % / {five.ViabilityLost.Percent} %; glycogen drop {one.GlycogenLost.Percent} % / {five.GlycogenLost.Percent} %"
            ),
            check.Expected
        );
    }

    [Theory] // the same
    [Check("YE-20")]
    public void Six_warm_days_as_published(Check check) =>
        check.Agrees(YeastKeeping.SixDays[^1].ViabilityLost.Percent, YeastKeeping.SixDays[^1].GlycogenLost.Percent);

    [Theory] // k = 0.0124 exp(0.44), by hand
    [Check("YE-28")]
    public void The_band_of_a_week_in_the_cold(Check check)
    {
        var left = StorageViability.After(Percent(100), TimeSpan.FromDays(7), Celsius(4)).Value;

        check.Agrees(left.Likely.DecimalFractions, left.High.DecimalFractions, left.Low.DecimalFractions);
    }

    [Theory] // Simpson & Hammond 1989
    [Check("YE-08")]
    public void An_acid_wash_is_cold_and_at_a_known_ph(Check check) =>
        Assert.StartsWith(
            FormattableString.Invariant(
                $"pH {YeastKeeping.AcidWashPh}, <= {YeastKeeping.AcidWashWarmest.DegreesCelsius} C"
            ),
            check.Expected,
            StringComparison.Ordinal
        );

    [Theory] // Stewart 2015
    [Check("YE-22")]
    public void Strong_wort_wears_yeast_out(Check check) =>
        check.Agrees([.. YeastKeeping.GenerationsByWort.Select(g => (double)g.Generations)]);

    [Theory] // Jenkins et al. 2003
    [Check("YE-23")]
    public void Strains_differ(Check check) =>
        check.Agrees([.. YeastKeeping.GenerationsByStrain.Select(g => (double)g)]);

    [Fact]
    public void The_usual_limit_lies_inside_what_is_published()
    {
        Assert.Equal(
            (8, 5),
            (YeastKeeping.GenerationLimit(Plato(16)).Value, YeastKeeping.GenerationLimit(Plato(16.1)).Value)
        );
        Assert.Equal("original-extract", YeastKeeping.GenerationLimit(Plato(41)).Refusal?.What);
    }

    [Theory] // a current textbook chapter
    [Check("YE-24")]
    public void Old_yeast_is_counted(Check check) => check.Agrees(YeastKeeping.LongestUncounted.TotalDays);

    [Theory]
    [InlineData(4, 5, 8, 85, false)]
    [InlineData(4.1, 5, 8, 85, true)]
    [InlineData(4, 5.1, 8, 85, true)]
    [InlineData(4, 5, 8.1, 85, true)]
    [InlineData(4, 5, 8, 84.9, true)]
    public void Doubt_asks_for_a_count(double days, double celsius, double abv, double guess, bool count) =>
        Assert.Equal(
            count,
            YeastKeeping.NeedsCount(
                TimeSpan.FromDays(days),
                Celsius(celsius),
                VolumeConcentration.FromPercent(abv),
                Guess(guess)
            )
        );
}
