using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Yeast;

public class ViabilityTests
{
    // Dossier of the storage model: at 4 °C 0.87 (0.76 to 0.93) of it after 7 days, 0.76 (0.58 to 0.87) after 14.
    [Theory]
    [InlineData(7, 87, 76, 93)]
    [InlineData(14, 76, 58, 87)]
    public void What_lives_of_slurry_at_four_degrees(double day, double likely, double low, double high)
    {
        var range = Viability.Now(Slurry, Kept(4), Rules, Day(day))!.Value;

        Assert.Equal((likely, low, high), (Whole(range.Likely), Whole(range.Low), Whole(range.High)));
    }

    [Fact]
    public void A_count_begins_it_anew()
    {
        var counted = TheFloor()
            .After(On(0, Fridge(Slurry, 1)), On(7, new Counted(Slurry.Id, 4, 100, 360, 40)))
            .Of(Slurry);

        Assert.Equal(90, Viability.Now(Slurry, counted, Rules, Day(7))!.Value.Likely.Percent, 1e-9);
    }

    [Fact]
    public void A_pack_has_no_estimate() =>
        Assert.Null(Viability.Now(Pack, TheFloor().After(On(0, Received(Pack, Grams(11.5)))).Of(Pack), Rules, Day(7)));

    [Theory]
    [InlineData(30, true)]
    [InlineData(30.1, false)] // the model says nothing of it
    public void The_estimate_ends_after_thirty_days(double day, bool isThere) =>
        Assert.Equal(isThere, Viability.Now(Slurry, Kept(4), Rules, Day(day)) is not null);

    [Fact]
    public void Yeast_kept_nobody_knows_how_cold_counts_as_kept_at_the_houses_limit() =>
        Assert.Equal(Viability.Now(Slurry, Kept(5), Rules, Day(7)), Viability.Now(Slurry, Kept(null), Rules, Day(7)));

    // k = 0.0124 exp(0.110 T): at 5 °C 0.02149 a day, so ln(1 / 0.7) / k = 16.6 days; at 10 °C 0.03725, 9.58 days.
    [Theory]
    [InlineData(5, 16.6)]
    [InlineData(10, 9.58)]
    public void It_falls_below_seventy_percent_on(double celsius, double day) =>
        Assert.Equal(Day(day), Viability.FallsBelow(0.70, Slurry, Kept(celsius), Rules)!.Value, TimeSpan.FromHours(1));

    [Fact]
    public void At_one_degree_it_stays_above_as_long_as_the_model_reaches() =>
        Assert.Null(Viability.FallsBelow(0.60, Slurry, Kept(1), Rules));

    [Fact]
    public void What_was_counted_below_it_is_below_it_at_once()
    {
        var dying = TheFloor()
            .After(On(0, Fridge(Slurry, 1)), On(2, new Counted(Slurry.Id, 4, 100, 60, 40)))
            .Of(Slurry);

        Assert.Equal(Day(2), Viability.FallsBelow(0.70, Slurry, dying, Rules));
    }

    private static CultureState Kept(double? celsius) =>
        TheFloor().After(On(0, Fridge(Slurry, 1) with { StoredAt = celsius is { } c ? Celsius(c) : null })).Of(Slurry);

    private static double Whole(UnitsNet.Ratio ratio) => Math.Round(ratio.Percent);
}
