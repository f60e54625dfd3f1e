using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Jobs;

/// <summary>Count, use or discard a culture; answer for what was done with it.</summary>
public class CultureJobsTests
{
    // Day 0 is 2 March. Kept at 1 °C so that its days come before its dying.
    [Fact]
    public void Slurry_is_due_after_fourteen_days_of_the_calendar_and_overdue_after_twenty_eight()
    {
        var job = Assert.Single(UseOrDiscard(Slurry, Fridge(Slurry, 1) with { StoredAt = Celsius(1) }));

        Assert.Equal((Midnight(3, 16), Midnight(3, 30)), (job.DueAt, job.OverdueAt)); // the clock was put forward on 29 March
        Assert.Equal(new("variant", "age"), job.Because[0]);
    }

    [Fact]
    public void Slurry_that_dies_sooner_is_due_sooner()
    {
        var job = Assert.Single(UseOrDiscard(Slurry, Fridge(Slurry, 1) with { StoredAt = Celsius(10) }));

        Assert.Equal(new("variant", "viability"), job.Because[0]);
        Assert.Equal(Day(9.58), job.DueAt, TimeSpan.FromHours(1)); // ln(1 / 0.7) / 0.03725
        Assert.Equal(Day(18.61), job.OverdueAt, TimeSpan.FromHours(1)); // ln(1 / 0.5) / 0.03725
    }

    [Fact]
    public void A_pack_is_due_at_its_date()
    {
        var pack = Pack with { UseBy = new(2026, 3, 29) };

        var job = Assert.Single(UseOrDiscard(pack, Received(pack, Grams(11.5))));

        Assert.Equal(
            (Midnight(3, 29), Midnight(4, 12), new("variant", "date")),
            (job.DueAt, job.OverdueAt, job.Because[0])
        );
    }

    [Fact]
    public void A_pack_without_a_date_waits() => Assert.Empty(UseOrDiscard(Pack, Received(Pack, Grams(11.5))));

    [Theory]
    [InlineData(7, "age")]
    [InlineData(8, "generation")] // the last one that is pitched
    public void The_last_generation_is_due_at_once(int generation, string why) =>
        Assert.Equal(
            new("variant", why),
            Assert.Single(UseOrDiscard(Slurry, Fridge(Slurry, generation) with { StoredAt = Celsius(1) })).Because[0]
        );

    [Theory]
    [InlineData(1.065, 8)] // 15.9 °P
    [InlineData(1.066, 5)] // 16.1 °P
    public void Yeast_out_of_strong_wort_is_used_less_often(double original, int limit)
    {
        Assert.Equal(limit, Generations.Limit(own: null, Sg(original), Rules));
        Assert.Equal(10, Generations.Limit(own: 10, Sg(original), Rules)); // the strain's own number
    }

    [Fact]
    public void A_jar_used_up_or_poured_away_is_nobodys_job()
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1, ml: 400)), On(0, Fridge(Second, 1)));
        floor = floor.After(On(1, Pitched((Slurry, Ml(400)))), On(1, new CultureDiscarded(Second.Id, "old")));

        Assert.Empty(JobRules.For(floor, Subject.Culture(Slurry.Id), Day(40)));
        Assert.Empty(JobRules.For(floor, Subject.Culture(Second.Id), Day(40)));
    }

    [Fact]
    public void Where_the_club_counts_slurry_is_counted_after_four_days_and_again_four_days_later()
    {
        var counted = On(5, new Counted(Slurry.Id, 4, 100, 380, 20));
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1)));

        Assert.Equal(Day(4), Assert.Single(Counts(floor)).DueAt);
        var again = Assert.Single(Counts(floor.After(counted)));
        Assert.Equal((Day(9), Day(23), counted.Id), (again.DueAt, again.OverdueAt, again.Cause));
    }

    [Fact]
    public void Where_it_does_not_nobody_is_asked_to()
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 1)));

        Assert.Empty(CountCulture.For(Slurry, floor.Of(Slurry), Rules, Day(9)));
    }

    [Fact]
    public void What_was_done_anyway_stays_until_a_brewer_answers()
    {
        var opened = On(1, new Opened(K3.Id)) with { DoneAnyway = ["under-pressure"] };
        var floor = TheFloor().After(opened);

        var job = Assert.Single(Answers(floor));
        Assert.Equal((Day(1), Day(3), opened.Id), (job.DueAt, job.OverdueAt, job.Cause));
        Assert.Empty(
            Answers(floor.After(On(2, new Answered(opened.Id, "the gauge stuck") { Touched = [.. opened.Subjects] })))
        );
    }

    [Fact]
    public void What_was_done_anyway_to_a_jar_is_answered_for_at_the_jar()
    {
        var away = On(1, new CultureDiscarded(Slurry.Id, "")) with { DoneAnyway = ["any-stop"] };

        Assert.Contains(
            JobRules.For(TheFloor().After(away), Subject.Culture(Slurry.Id), Day(1)),
            job => job.Rule is AnswerForIt.Rule && job.Cause == away.Id
        );
    }

    private static IEnumerable<Job> Answers(Floor floor) =>
        JobRules.For(floor, Subject.Tank(K3.Id), Day(2)).Where(job => job.Rule is AnswerForIt.Rule);

    private static IEnumerable<Job> Counts(Floor floor) =>
        CountCulture.For(Slurry, floor.Of(Slurry), Rules with { CountsCultures = true }, Day(9));

    private static IEnumerable<Job> UseOrDiscard(Culture culture, LogEntry brought) =>
        UseOrDiscardCulture.For(culture, TheFloor().After(On(0, brought)).Of(culture), Rules, Day(1));

    private static DateTimeOffset Midnight(int month, int day) => Rules.StartOf(new(2026, month, day));
}
