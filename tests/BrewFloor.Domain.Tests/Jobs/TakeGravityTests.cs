using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Jobs;

public class TakeGravityTests
{
    private static readonly LogEntry[] Pitched =
    [
        FilledAt(1.050).On(0),
        new Pitched(K3.Id, Batch118.Id, []) { Words = "House ale" }.On(0),
    ];

    [Fact]
    public void Wort_without_yeast_needs_no_gravity() => Assert.Empty(Jobs(After(FilledAt(1.050).On(0))));

    [Fact]
    public void The_first_is_due_a_day_after_pitching_and_overdue_a_day_later() =>
        Assert.Equal((Day(1), Day(2), "first"), Next(Pitched));

    [Fact]
    public void While_it_falls_it_is_read_daily() =>
        Assert.Equal((Day(4), Day(5), "falling"), Next([.. Pitched, Gravity(1.030).On(2), Gravity(1.020).On(3)]));

    [Theory]
    [InlineData(5, 7)] // the next day, as ever
    [InlineData(5.9, 7.9)] // 48 h after the first of the two
    public void Two_that_say_the_same_want_a_third_forty_eight_hours_after_the_first(double first, double due) =>
        Assert.Equal(
            (Day(due), Day(due + 1), "level"),
            Next([.. Pitched, Gravity(1.010).On(first), Gravity(1.010).On(6)])
        );

    [Fact]
    public void Finished_beer_is_read_no_more() =>
        Assert.Empty(Jobs(After([.. Pitched, Gravity(1.010).On(8), Gravity(1.010).On(10)])));

    [Fact]
    public void Beer_that_stopped_above_its_limit_is_read_on() =>
        Assert.Equal((Day(11), Day(12), "stuck"), Next([.. Pitched, Gravity(1.020).On(8), Gravity(1.020).On(10)]));

    [Fact]
    public void Level_beer_whose_limit_nobody_knows_is_read_no_more() =>
        Assert.Empty(
            Jobs(
                After([.. Pitched, Gravity(1.020).On(8), Gravity(1.020).On(10)])
                    .Where(Batch118 with { LimitOfAttenuation = null })
            )
        );

    [Fact]
    public void Hops_that_meet_yeast_open_it_again_until_it_has_been_found_level_since()
    {
        LogEntry[] hopped = [.. Pitched, Gravity(1.010).On(8), Gravity(1.010).On(10), DryHopped().On(12)];

        Assert.Equal((Day(13), Day(14), "hopped"), Next(hopped));
        Assert.Equal((Day(14), Day(15), "falling"), Next([.. hopped, Gravity(1.008).On(13)]));
        Assert.Empty(Jobs(After([.. hopped, Gravity(1.008).On(13), Gravity(1.008).On(15)])));
    }

    [Fact]
    public void Beer_in_two_tanks_is_read_in_both()
    {
        LogEntry[] split = [FilledAt(1.050).On(0), Filled(400, tank: P2).On(0, 9), Pitched[1], Gravity(1.030).On(2)];
        var jobs = Jobs(After(split)).ToArray();

        Assert.Equal([K3.Id, P2.Id], jobs.Select(job => job.TankId!.Value));
        Assert.Equal(2, jobs.Select(job => job.Cause).Distinct().Count());
    }

    [Fact]
    public void Beer_that_is_gone_is_read_no_more() => Assert.Empty(Jobs(After([.. Pitched, Emptied().On(3)])));

    [Fact]
    public void Beer_that_was_taken_over_is_read_the_day_after() =>
        Assert.Equal(
            Day(4),
            Assert
                .Single(
                    Jobs(After(new BatchTakenOver(K3.Id, new(Batch118.Id, "Harvest Ale", "Pale", BeerKind.Ale)).On(3)))
                )
                .DueAt
        );

    private static (DateTimeOffset DueAt, DateTimeOffset OverdueAt, object? Variant) Next(params LogEntry[] log) =>
        Assert.Single(Jobs(After(log))) is var job ? (job.DueAt, job.OverdueAt, job.Because[0].Value) : default;

    private static IEnumerable<Job> Jobs(Floor floor) =>
        JobRules.For(floor, Subject.Batch(Batch118.Id), Day(20)).Where(job => job.Rule is TakeGravity.Rule);
}
