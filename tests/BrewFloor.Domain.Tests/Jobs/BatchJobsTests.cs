using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Jobs;

/// <summary>Dump trub, dump yeast, harvest, take a gravity. Batch 118 is an ale that may fall to 1.010.</summary>
public class BatchJobsTests
{
    private static readonly LogEntry[] Finished =
    [
        FilledAt(1.050).On(0),
        Yeast().On(0, 9),
        Dumped(Sediment.Trub).On(0.5),
        Gravity(1.010).On(8),
        Gravity(1.010).On(10),
    ];

    [Theory]
    [InlineData(BeerKind.Ale, 20)]
    [InlineData(BeerKind.Lager, 26)] // 8 in the morning and 18 h
    public void Trub_is_due_twelve_hours_after_filling_an_ale_and_eighteen_after_a_lager(BeerKind kind, int hour)
    {
        var floor = After(FilledAt(1.050).On(0)).Where(Batch118 with { Kind = kind });

        var job = Assert.Single(Jobs(DumpTrub.Rule, floor, Day(0, 9)));

        Assert.Equal((Day(0, hour), Day(2), K3.Id), (job.DueAt, job.OverdueAt, job.TankId));
    }

    [Fact]
    public void Twelve_hours_are_twelve_hours_also_on_the_night_the_clock_is_put_forward()
    {
        var filled = new DateTimeOffset(2026, 3, 28, 21, 0, 0, TimeSpan.FromHours(1)); // winter time's last evening
        var job = Assert.Single(Jobs(DumpTrub.Rule, After(Filled() with { At = filled }), filled));

        Assert.Equal(new DateTime(2026, 3, 29, 10, 0, 0), TimeZoneInfo.ConvertTime(job.DueAt, Rules.Zone).DateTime);
    }

    [Theory]
    [InlineData(20, "2026-03-02T20:00", false)] // 11 h after pitching
    [InlineData(21, "2026-03-06T09:00", true)] // 12 h: it begins
    [InlineData(105, "2026-03-06T09:00", true)] // 96 h: its last moment
    [InlineData(105.01, "2026-03-06T09:00", false)] // over, and no time lost
    public void Trub_waits_while_it_ferments_hard(double hour, string due, bool waits)
    {
        var job = Assert.Single(Jobs(DumpTrub.Rule, After(FilledAt(1.050).On(0), Yeast().On(0, 9)), Day(0, hour)));

        Assert.Equal(
            DateTime.Parse(due, provider: null),
            job.DueAt.ToOffset(TimeSpan.FromHours(1)).DateTime,
            TimeSpan.FromMilliseconds(1)
        );
        Assert.Equal(waits, job.Because[0] == new Number("variant", "waits"));
        Assert.Equal(TimeSpan.FromHours(36), job.OverdueAt - job.DueAt);
    }

    [Fact]
    public void Whoever_waits_is_looked_at_again_when_it_begins_and_ends_to_ferment_hard()
    {
        var floor = After(FilledAt(1.050).On(0), Yeast().On(0, 9));

        Assert.Equal(Day(0, 21), Assert.Single(Jobs(DumpTrub.Rule, floor, Day(0, 10))).ChangesAt);
        Assert.Equal(Day(0, 105).AddMicroseconds(1), Assert.Single(Jobs(DumpTrub.Rule, floor, Day(2))).ChangesAt);
        Assert.Null(Assert.Single(Jobs(DumpTrub.Rule, floor, Day(6))).ChangesAt);
    }

    [Fact]
    public void A_reading_that_no_longer_falls_ends_the_waiting()
    {
        var floor = After(FilledAt(1.050).On(0), Yeast().On(0, 9), Gravity(1.020).On(2), Gravity(1.018).On(3));

        Assert.Equal(Day(3), Assert.Single(Jobs(DumpTrub.Rule, floor, Day(3, 9))).DueAt);
    }

    [Fact]
    public void Dumped_trub_is_done_in_its_own_tank()
    {
        var floor = After(FilledAt(1.050).On(0), Filled(tank: P2, litres: 400).On(0), Dumped(Sediment.Trub).On(0.5));

        Assert.Equal([P2.Id], Jobs(DumpTrub.Rule, floor, Day(1)).Select(job => job.TankId!.Value));
    }

    [Fact]
    public void Trub_comes_out_before_the_harvest()
    {
        var floor = After([.. Finished.Where(e => e is not Domain.Batches.Dumped)])
            .Where(Batch118 with { HarvestPlanned = true });
        var job = Assert.Single(Jobs(DumpTrub.Rule, floor, Day(10)));

        Assert.Equal(Urgency.Overdue, job.At(Day(10)));
    }

    [Fact]
    public void A_tank_that_was_racked_into_has_no_trub_and_no_yeast_to_dump()
    {
        var floor = After([.. Finished, Racked(850).On(11)]);

        Assert.Empty(Jobs(DumpTrub.Rule, floor, Day(12)));
        Assert.Empty(Jobs(DumpYeast.Rule, floor, Day(12)));
    }

    [Theory]
    [InlineData(TankType.ConicalFermenter, true)]
    [InlineData(TankType.PressureRatedConical, true)]
    [InlineData(TankType.PlasticConical, true)]
    [InlineData(TankType.Bucket, false)]
    [InlineData(TankType.BrightTank, false)]
    public void Only_a_tank_with_a_cone_is_asked_for_its_trub_and_its_yeast(TankType type, bool asks)
    {
        var floor = After([.. Finished.Where(e => e is not Domain.Batches.Dumped)]);
        floor = floor with { Tanks = [.. floor.Tanks.Select(t => (t.Thing with { Type = type }, t.State))] };

        Assert.Equal(asks, Jobs(DumpTrub.Rule, floor, Day(11)).Any());
        Assert.Equal(asks, Jobs(DumpYeast.Rule, floor, Day(11)).Any());
    }

    [Fact]
    public void Of_beer_that_was_taken_over_nobody_knows_whether_trub_was_dumped() =>
        Assert.Empty(
            Jobs(
                DumpTrub.Rule,
                After(new BatchTakenOver(K3.Id, new(Batch118.Id, "Harvest Ale", "Pale ale", BeerKind.Ale)).On(3)),
                Day(4)
            )
        );

    [Theory]
    [InlineData(18, 48)]
    [InlineData(13.1, 48)]
    [InlineData(13, 7 * 24)]
    [InlineData(4.1, 7 * 24)]
    [InlineData(4, 3 * 24)]
    public void Yeast_may_lie_as_long_as_its_warmth_allows(double celsius, int hours)
    {
        var job = Assert.Single(Jobs(DumpYeast.Rule, After([.. Finished, Read(celsius).On(10, 9)]), Day(10, 10)));

        Assert.Equal((Day(10), TimeSpan.FromHours(hours)), (job.DueAt, job.OverdueAt - job.DueAt));
    }

    [Fact]
    public void Yeast_is_left_in_peace_until_it_has_finished() =>
        Assert.Empty(Jobs(DumpYeast.Rule, After([.. Finished.SkipLast(1)]), Day(9)));

    [Fact]
    public void Yeast_dumped_before_the_end_does_not_count_and_after_it_does()
    {
        var before = After([.. Finished.Take(4), Dumped(Sediment.Yeast).On(9), .. Finished.TakeLast(1)]);

        Assert.Single(Jobs(DumpYeast.Rule, before, Day(11)));
        Assert.Empty(Jobs(DumpYeast.Rule, before.And(Dumped(Sediment.Yeast).On(11)), Day(11)));
    }

    [Fact]
    public void Yeast_is_dumped_again_a_day_after_the_crash()
    {
        LogEntry[] crash = [Dumped(Sediment.Yeast).On(10, 12), SetTo(2, batch: Batch118).On(11), Read(3).On(12)];
        var job = Assert.Single(Jobs(DumpYeast.Rule, After([.. Finished, .. crash]), Day(12)));

        Assert.Equal((Day(13), Day(16)), (job.DueAt, job.OverdueAt));
        Assert.Equal(new("variant", "cold"), job.Because[0]);
    }

    [Fact]
    public void No_yeast_is_dumped_while_a_harvest_is_planned()
    {
        var planned = After(Finished).Where(Batch118 with { HarvestPlanned = true });
        var taken = planned.And(new Harvested(K3.Id, Batch118.Id, HarvestedFrom.Cone, []).On(11));

        Assert.Empty(Jobs(DumpYeast.Rule, planned, Day(11)));
        Assert.Single(Jobs(DumpYeast.Rule, taken, Day(11)));
    }

    [Fact]
    public void A_planned_harvest_is_due_at_the_end_and_overdue_two_days_later()
    {
        var planned = After(Finished).Where(Batch118 with { HarvestPlanned = true });
        var job = Assert.Single(Jobs(HarvestYeast.Rule, planned, Day(10)));

        Assert.Equal((Day(10), Day(12), K3.Id), (job.DueAt, job.OverdueAt, job.TankId));
        Assert.Empty(Jobs(HarvestYeast.Rule, After(Finished), Day(10))); // nobody planned one
        Assert.Empty(Jobs(HarvestYeast.Rule, planned.And(Emptied().On(11)), Day(11))); // the beer is gone
    }

    [Fact]
    public void Where_no_limit_is_known_a_gravity_that_stands_still_begins_the_harvest()
    {
        var planned = After(Finished).Where(Batch118 with { HarvestPlanned = true, LimitOfAttenuation = null });

        Assert.Equal(Day(10), Assert.Single(Jobs(HarvestYeast.Rule, planned, Day(10))).DueAt);
    }

    [Fact]
    public void Beer_that_was_crashed_above_its_limit_is_harvested_all_the_same()
    {
        LogEntry[] stuck = [.. Finished.Take(3), Gravity(1.020).On(8), Gravity(1.020).On(10)];
        var planned = After(stuck).Where(Batch118 with { HarvestPlanned = true });
        var crashed = planned.And(SetTo(2, batch: Batch118).On(11), Read(3).On(12));

        Assert.Empty(Jobs(HarvestYeast.Rule, planned, Day(11)));
        Assert.Equal(Day(12), Assert.Single(Jobs(HarvestYeast.Rule, crashed, Day(12))).DueAt);
    }

    [Fact]
    public void Wort_that_has_not_begun_is_no_harvest()
    {
        LogEntry[] lag = [FilledAt(1.050).On(0), Yeast().On(0, 9), Gravity(1.050).On(1), Gravity(1.050).On(3)];
        LogEntry[] unpitched = [FilledAt(1.050).On(0), SetTo(2, batch: Batch118).On(0, 9), Read(3).On(0, 12)];
        var wanting = Batch118 with { HarvestPlanned = true, LimitOfAttenuation = null };

        Assert.Empty(Jobs(HarvestYeast.Rule, After(lag).Where(wanting), Day(4)));
        Assert.Empty(Jobs(HarvestYeast.Rule, After(unpitched).Where(wanting), Day(4)));
    }

    private static Pitched Yeast() => new(K3.Id, Batch118.Id, []) { Words = "House ale" };

    private static IEnumerable<Job> Jobs(string rule, Floor floor, DateTimeOffset now) =>
        JobRules
            .For(floor, Subject.Batch(Batch118.Id), now)
            .Where(job => string.Equals(job.Rule, rule, StringComparison.Ordinal));
}
