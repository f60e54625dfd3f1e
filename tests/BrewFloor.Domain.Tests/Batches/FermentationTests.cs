using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class FermentationTests
{
    private static readonly Floor Pitched118 = After(FilledAt(1.048).On(0), Pitched().On(0, hour: 10));

    [Theory]
    [InlineData(44.0, true)] // to the minute
    [InlineData(43.98, false)]
    public void Two_equal_readings_44_h_apart_are_stable(double hours, bool isStable) =>
        Assert.Equal(isStable, IsStable(Gravity(1.010).On(9), Gravity(1.010).On(9, hour: 8 + hours)));

    [Theory]
    // 1.01000 is 2.56 °P; 0.1 °P there is 0.00039
    [InlineData(1.00962, true)]
    [InlineData(1.00960, false)]
    [InlineData(1.01038, true)]
    [InlineData(1.01040, false)]
    public void They_may_differ_by_a_tenth_of_a_degree_Plato(double then, bool isStable) =>
        Assert.Equal(isStable, IsStable(Gravity(1.010).On(9), Gravity(then).On(11)));

    [Theory]
    [InlineData(1.009, true)]
    [InlineData(1.0089, false)]
    public void By_hydrometer_they_may_differ_by_a_thousandth(double then, bool isStable)
    {
        Assert.Equal(isStable, IsStable(ByHydrometer(1.010).On(9), ByHydrometer(then).On(11)));
        Assert.Equal(isStable, IsStable(Gravity(1.010).On(9), ByHydrometer(then).On(11)));
    }

    [Fact]
    public void A_lower_reading_between_says_that_one_of_them_is_wrong()
    {
        Assert.False(IsStable(Gravity(1.010).On(9), Gravity(1.008).On(10), Gravity(1.010).On(11)));
        Assert.True(IsStable(Gravity(1.010).On(9), Gravity(1.013).On(10), Gravity(1.010).On(11)));
    }

    [Fact]
    public void It_is_stable_by_its_latest_reading()
    {
        Assert.False(IsStable(Gravity(1.010).On(9), Gravity(1.010).On(11), Gravity(1.008).On(12)));
        Assert.True(
            IsStable(Gravity(1.010).On(9), Gravity(1.010).On(11), Gravity(1.008).On(12), Gravity(1.008).On(14))
        );
    }

    [Fact]
    public void A_batch_in_two_tanks_is_stable_when_both_are()
    {
        var floor = Pitched118.And(Gravity(1.010).On(9), (Racked(400) with { IsRest = false }).On(10));
        var one = floor.And(Gravity(1.010).On(11));

        Assert.True(one.Of(Batch118).IsStable(K3.Id, Rules));
        Assert.False(one.Of(Batch118).IsStable(B1.Id, Rules)); // read before it came there, not since
        Assert.False(one.Of(Batch118).IsStable(Rules));
        Assert.True(one.And(Gravity(1.010, B1).On(11, hour: 9)).Of(Batch118).IsStable(Rules));
    }

    [Fact]
    public void It_is_finished_when_stable_and_down_at_its_limit()
    {
        Assert.Equal(Day(11), Finished(1.010, Gravity(1.010).On(9), Gravity(1.010).On(11), Gravity(1.010).On(13)));
        Assert.Null(Finished(1.010, Gravity(1.014).On(9), Gravity(1.014).On(11))); // stuck
        Assert.Null(Finished(null, Gravity(1.010).On(9), Gravity(1.010).On(11))); // nobody knows
    }

    [Theory]
    [InlineData(1.01038, true)] // within what a reading is off, 0.1 °P
    [InlineData(1.01040, false)]
    public void The_limit_is_met_within_what_a_reading_is_off(double gravity, bool isFinished) =>
        Assert.Equal(isFinished, Finished(1.010, Gravity(gravity).On(9), Gravity(gravity).On(11)) is not null);

    [Fact]
    public void A_beer_that_falls_again_was_not_finished() =>
        Assert.Equal(
            Day(16),
            Finished(
                1.010,
                Gravity(1.010).On(9),
                Gravity(1.010).On(11),
                Gravity(1.008).On(13),
                Gravity(1.0075).On(14),
                Gravity(1.0075).On(16)
            )
        );

    [Theory]
    [InlineData(11.9, false)]
    [InlineData(12, true)]
    [InlineData(96, true)]
    [InlineData(96.1, false)]
    public void Unread_beer_ferments_hard_from_12_to_96_h_after_the_yeast(double hours, bool isHard) =>
        Assert.Equal(isHard, Pitched118.Of(Batch118).IsFermentingHard(Rules, Day(0, hour: 10).AddHours(hours)));

    [Fact]
    public void Wort_without_yeast_does_not_ferment_hard() =>
        Assert.False(After(FilledAt(1.048).On(0)).Of(Batch118).IsFermentingHard(Rules, Day(2)));

    [Theory]
    // 1.03000 is 7.55 °P; 1 °P below it is 1.02594
    [InlineData(1.0259, true)]
    [InlineData(1.0260, false)]
    public void It_ferments_hard_when_it_fell_more_than_1_Plato_in_a_day(double then, bool isHard) =>
        Assert.Equal(isHard, IsHard(Day(4, hour: 12), Gravity(1.030).On(3), Gravity(then).On(4)));

    [Fact]
    public void Two_readings_days_apart_are_judged_by_their_mean_fall()
    {
        Assert.True(IsHard(Day(5), Gravity(1.040).On(2), Gravity(1.025).On(5))); // 3.7 °P in 3 days
        Assert.False(IsHard(Day(5), Gravity(1.028).On(2), Gravity(1.025).On(5))); // 0.7 °P in 3 days
    }

    [Fact]
    public void The_first_reading_is_held_against_the_wort()
    {
        Assert.True(IsHard(Day(3), Gravity(1.030).On(3)));
        Assert.False(IsHard(Day(3), Gravity(1.0475).On(3))); // it hasn't started
    }

    [Fact]
    public void A_reading_older_than_a_day_says_nothing_of_now()
    {
        Assert.True(IsHard(Day(3, hour: 9), Gravity(1.0475).On(2, hour: 8))); // back to the hours since the yeast
        Assert.False(IsHard(Day(9), Gravity(1.030).On(5), Gravity(1.020).On(6)));
    }

    [Fact]
    public void A_stable_beer_does_not_ferment_hard() =>
        Assert.False(IsHard(Day(3, hour: 8), Gravity(1.0475).On(0, hour: 12), Gravity(1.0475).On(2, hour: 8)));

    private static bool IsStable(params GravityTaken[] readings) =>
        After([Filled().On(0), .. readings]).Of(Batch118).IsStable(Rules);

    private static bool IsHard(DateTimeOffset now, params GravityTaken[] readings) =>
        Pitched118.And([.. readings]).Of(Batch118).IsFermentingHard(Rules, now);

    private static DateTimeOffset? Finished(double? limit, params GravityTaken[] readings)
    {
        var batch = Batch118 with { LimitOfAttenuation = limit is { } gravity ? Sg20(gravity) : null };
        return After([Filled().On(0), .. readings]).Of(Batch118).FinishedAt(batch, Rules)?.At;
    }
}
