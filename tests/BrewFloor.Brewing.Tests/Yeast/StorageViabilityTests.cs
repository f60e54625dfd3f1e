using BrewFloor.Brewing.Yeast;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Yeast;

public class StorageViabilityTests
{
    private static Outcome<ViabilityRange> After(double counted, double days, double celsius) =>
        StorageViability.After(Ratio.FromPercent(counted), TimeSpan.FromDays(days), Celsius(celsius));

    [Theory] // our fit to McCaig & Bendiak 1985
    [Check("YE-05")]
    public void A_week_in_the_cold_costs_an_eighth(Check check) =>
        check.Agrees(After(100, 7, 4).Value.Likely.DecimalFractions);

    [Fact] // the range printed with the fit: 7 d at 4 °C, 0.76 to 0.93; 14 d, 0.58 to 0.87
    public void The_range_is_twice_and_half_as_fast()
    {
        var (week, fortnight) = (After(100, 7, 4).Value, After(100, 14, 4).Value);

        Assert.Equal((0.76, 0.93), (Round(week.Low), Round(week.High)));
        Assert.Equal((0.58, 0.87), (Round(fortnight.Low), Round(fortnight.High)));
    }

    [Theory] // McCaig & Bendiak 1985, abstract: 6 days; 7 % lost at 1 °C, 14 % at 5 °C, up to 68 % warm
    [InlineData(1, 7)]
    [InlineData(5, 14)]
    [InlineData(25, 68)]
    public void The_range_holds_the_points_it_was_fitted_to(double celsius, double lost)
    {
        var left = After(100, 6, celsius).Value;

        Assert.InRange(100 - lost, left.Low.Percent, left.High.Percent);
    }

    [Fact]
    public void Fresh_yeast_is_as_it_was_counted() =>
        Assert.Equal(
            new ViabilityRange(Ratio.FromPercent(93), Ratio.FromPercent(93), Ratio.FromPercent(93)),
            After(93, 0, 4).Value
        );

    [Fact]
    public void Older_and_warmer_is_never_livelier_and_the_range_keeps_its_order() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[0, 29], Gen.Double[0, 24])
            .Sample(
                (counted, days, celsius) =>
                {
                    var left = After(counted, days, celsius).Value;
                    Assert.True(left.Low <= left.Likely && left.Likely <= left.High);
                    Assert.True(After(counted, days + 1, celsius).Value.Likely < left.Likely);
                    Assert.True(After(counted, days, celsius + 1).Value.Likely <= left.Likely);
                }
            );

    [Fact]
    public void Beyond_the_data_it_refuses()
    {
        Assert.Equal(OutOfRange("viability", "0", "100", "%"), After(100.1, 7, 4).Refusal);
        Assert.Equal(OutOfRange("age", "0", "30", "d"), After(95, 30.1, 4).Refusal);
        Assert.Equal(OutOfRange("age", "0", "30", "d"), After(95, -0.1, 4).Refusal);
        Assert.Equal(OutOfRange("temperature", "0", "25", "°C"), After(95, 7, -0.1).Refusal);
        Assert.Equal(OutOfRange("temperature", "0", "25", "°C"), After(95, 7, 25.1).Refusal);
    }

    private static double Round(Ratio ratio) => Math.Round(ratio.DecimalFractions, 2);
}
