using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;
using static BrewFloor.Domain.Tests.Jobs.CalendarLogs;

namespace BrewFloor.Domain.Tests.Jobs;

public class RepassivateTests
{
    [Theory]
    [InlineData("2026-03-02T12:00+01:00", "2026-09-02")]
    [InlineData("2026-08-31T12:00+02:00", "2027-02-28")] // a month without that day ends with its last
    [InlineData("2027-08-31T12:00+02:00", "2028-02-29")] // in a leap year on its own
    [InlineData("2026-08-29T12:00+02:00", "2027-02-28")]
    [InlineData("2026-12-31T23:30+01:00", "2027-06-30")] // New Year's Eve on the site's calendar
    [InlineData("2026-12-31T23:30+00:00", "2027-07-01")] // New Year's Day by then in Berlin
    public void Six_months_are_months_of_the_calendar(string dried, string due) =>
        Assert.Equal(DateOnly.Parse(due, provider: null), Repassivate.DueOn(OftenFilled(dried), Rules));

    [Theory] // dried on 2 March; the four months end on 2 July
    [InlineData(2, "2026-07-02T12:00+02:00", "2026-07-02")]
    [InlineData(2, "2026-07-01T23:59+02:00", "2026-09-02")] // the third filling on the last day that counts
    [InlineData(2, "2026-07-02T00:00+02:00", "2026-07-02")] // comes too late: judged once
    [InlineData(1, "2026-07-01T12:00+02:00", "2026-07-02")] // two in all
    public void Seldom_used_steel_comes_sooner(int earlier, string last, string due)
    {
        DateTimeOffset[] fills = [.. Enumerable.Range(1, earlier).Select(i => At(24 * i)), Instant(last)];
        var tank = DriedAt("2026-03-02T12:00+01:00", fills);

        Assert.Equal(DateOnly.Parse(due, provider: null), Repassivate.DueOn(tank, Rules));
    }

    [Theory]
    [InlineData("Europe/Berlin", "2026-09-29T12:00+02:00", "2027-03-28T22:00Z")] // 29 March 2027, the day after the clocks changed
    [InlineData("Europe/Berlin", "2026-09-28T12:00+02:00", "2027-03-27T23:00Z")] // 28 March 2027 is 23 hours long
    [InlineData("America/New_York", "2026-05-01T12:00-04:00", "2026-11-01T04:00Z")] // 1 November 2026 is 25 hours long
    [InlineData("America/New_York", "2026-05-02T12:00-04:00", "2026-11-02T05:00Z")]
    [InlineData("Asia/Beirut", "2026-09-29T12:00+03:00", "2027-03-28T21:00Z")] // 29 March 2027, summer time
    [InlineData("Asia/Beirut", "2026-09-28T12:00+03:00", "2027-03-27T22:00Z")] // its midnight is skipped: one o'clock begins it
    public void The_day_it_is_due_begins_at_its_first_instant(string zone, string dried, string dueAt)
    {
        var rules = RulesIn(zone);
        var job = Repassivate.For(K3, OftenFilled(dried), rules, At(0)).Single();

        Assert.Equal(Instant(dueAt), job.DueAt);
        Assert.Equal(rules.StartOf(Repassivate.DueOn(OftenFilled(dried), rules)!.Value.AddDays(14)), job.OverdueAt);
        Assert.Equal(Cause, job.Cause);
    }

    [Fact]
    public void It_is_due_on_its_day_and_overdue_two_weeks_later()
    {
        var job = Repassivate.For(K3, OftenFilled("2026-03-02T12:00+01:00"), Rules, At(0)).Single();

        Assert.Equal(Urgency.Soon, job.At(Instant("2026-09-01T23:59+02:00")));
        Assert.Equal(Urgency.Due, job.At(Instant("2026-09-02T00:00+02:00")));
        Assert.Equal(Urgency.Due, job.At(Instant("2026-09-15T23:59+02:00")));
        Assert.Equal(Urgency.Overdue, job.At(Instant("2026-09-16T00:00+02:00")));
    }

    [Fact]
    public void The_job_says_why()
    {
        var seldom = DriedAt("2026-03-02T12:00+01:00", At(24), At(48));

        Assert.Equal(
            [
                new("variant", "seldom"),
                new("dried", new DateOnly(2026, 3, 2)),
                new("due", new DateOnly(2026, 7, 2)),
                new("fills", 2),
                new("months", 4),
            ],
            Repassivate.For(K3, seldom, Rules, At(0)).Single().Because
        );
    }

    [Fact]
    public void Hurt_steel_is_due_at_once_and_the_first_hurt_is_the_cause()
    {
        var rust = Triggered(5);
        var job = JobOf(After(Passivated(1), AirDried(2), rust, Triggered(30, Trigger.Scratch)));

        Assert.Equal((rust.Id, rust.At, "hurt"), (job.Cause, job.DueAt, job.Because[0].Value));
        Assert.Equal(Instant("2026-03-16T00:00+01:00"), job.OverdueAt);
        Assert.Equal("rust", job.Because[1].Value);
    }

    [Fact]
    public void A_bath_does_not_end_the_job_and_its_drying_does()
    {
        var hurt = After(Passivated(1), AirDried(2), Triggered(5), Passivated(6));

        Assert.Equal("hurt", JobOf(hurt).Because[0].Value);
        Assert.Equal(Urgency.Soon, JobOf(hurt.Then(AirDried(7))).At(At(8)));
    }

    [Fact]
    public void Steel_taken_over_as_unknown_has_two_weeks_and_then_two_more()
    {
        var takenOver = Then(5, new TankTakenOver(K3.Id));
        var job = JobOf(After(takenOver));

        Assert.Equal((takenOver.Id, "unknown"), (job.Cause, job.Because[0].Value));
        Assert.Equal(Instant("2026-03-16T00:00+01:00"), job.DueAt);
        Assert.Equal(Instant("2026-03-30T00:00+02:00"), job.OverdueAt); // summer time by then
    }

    [Fact]
    public void New_steel_is_due_from_the_first_line_of_its_log()
    {
        var takenOver = Then(5, new TankTakenOver(K3.Id) { IsNeverPassivated = true });
        var job = JobOf(After(takenOver, Rinsed(6)));

        Assert.Equal((takenOver.Id, At(5), "never"), (job.Cause, job.DueAt, job.Because[0].Value));
    }

    [Fact]
    public void Plastic_and_what_is_retired_have_no_such_job()
    {
        var tank = After(Triggered(1));

        Assert.Empty(Repassivate.For(Plastic, tank, Rules, At(9)));
        Assert.Empty(Repassivate.For(K3 with { RetiredOn = new(2026, 3, 2) }, tank, Rules, At(9)));
    }

    private static Job JobOf(TankState tank) => Repassivate.For(K3, tank, Rules, At(9)).Single();
}
