using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;
using static BrewFloor.Domain.Tests.Jobs.CalendarLogs;

namespace BrewFloor.Domain.Tests.Jobs;

public class TankJobsTests
{
    [Fact]
    public void A_soiled_tank_is_washed_when_emptied_and_overdue_a_day_later()
    {
        var emptied = Soiled(5);
        var job = WashSoiledTank.For(K3, emptied, Rules, At(6)).Single();

        Assert.Equal((emptied.SoilSince.Entry, At(5), At(29)), (job.Cause, job.DueAt, job.OverdueAt));
    }

    public static readonly TheoryData<bool, LogEntry[]> Washing = new()
    {
        { true, [] },
        { true, [Rinsed(6)] }, // water alone
        { true, [Rinsed(6), Rinsed(7)] },
        { false, [Washed(6)] },
        { false, [Rinsed(6), Washed(7), Rinsed(8)] },
        { false, Cleaned },
        { true, [.. Cleaned, Inspected(9, passed: false)] },
    };

    [Theory]
    [MemberData(nameof(Washing))]
    public void Only_a_wash_ends_it(bool open, LogEntry[] log) =>
        Assert.Equal(open, WashSoiledTank.For(K3, Soiled(1).Then(log), Rules, At(9)).Any());

    [Fact]
    public void A_rinse_leaves_the_job_the_one_it_was()
    {
        var emptied = Soiled(5);

        Assert.Equal(
            WashSoiledTank.For(K3, emptied, Rules, At(6)),
            WashSoiledTank.For(K3, emptied.Then(Rinsed(6)), Rules, At(7))
        );
    }

    [Fact]
    public void A_failed_inspection_asks_for_a_wash_of_its_own()
    {
        var failed = Inspected(9, passed: false);

        Assert.Equal(
            failed.Id,
            WashSoiledTank.For(K3, Soiled(0).Then([.. Cleaned, failed]), Rules, At(9)).Single().Cause
        );
    }

    [Fact]
    public void A_tank_that_holds_beer_is_not_to_be_washed() =>
        Assert.Empty(WashSoiledTank.For(K3, Soiled(0).WithBeer(), Rules, At(9)));

    [Theory]
    [InlineData(Agent.Peracetic, 12)]
    [InlineData(Agent.AcidAnionic, 12)]
    [InlineData(Agent.Iodophor, 24)]
    [InlineData(Agent.HotWater, 24)]
    public void Sanitizer_is_drained_in_time_and_acid_sooner(Agent agent, double hours)
    {
        var sanitized = Sanitized(1, agent);
        var job = DrainSanitizer.For(K3, After(sanitized), Rules, At(2)).Single();

        Assert.Equal((sanitized.Id, At(1 + hours), At(1 + hours + 24)), (job.Cause, job.DueAt, job.OverdueAt));
        Assert.Empty(DrainSanitizer.For(K3, After(sanitized, Drained(2)), Rules, At(3)));
    }

    [Fact]
    public void The_drying_of_a_bath_is_recorded_within_twelve_hours()
    {
        var bath = Passivated(1);
        var job = RecordAirDrying.For(K3, After(bath), Rules, At(2)).Single();

        Assert.Equal((bath.Id, At(13), At(37)), (job.Cause, job.DueAt, job.OverdueAt));
        Assert.Empty(RecordAirDrying.For(K3, After(bath, AirDried(2)), Rules, At(3)));
        Assert.Empty(RecordAirDrying.For(K3, After(bath, Rinsed(2)), Rules, At(3))); // void
    }

    [Theory]
    [InlineData(150, false)] // the relief valve's setting
    [InlineData(150.1, true)]
    public void A_reading_above_the_limit_is_overdue_at_once(double kPa, bool open)
    {
        var reading = Read(1, kPa);
        var jobs = LowerPressure.For(K3, After(reading), Rules, At(2)).ToArray();

        Assert.Equal(open ? [(reading.Id, Urgency.Overdue)] : [], jobs.Select(j => (j.Cause, j.At(reading.At))));
    }

    [Fact]
    public void More_readings_above_it_are_the_same_job_and_one_below_it_ends_it()
    {
        var first = Read(1, 160);
        var tank = After(first, Read(2, 180), Read(3, 155));

        Assert.Equal(first.Id, LowerPressure.For(K3, tank, Rules, At(4)).Single().Cause);
        Assert.Empty(LowerPressure.For(K3, tank.Then(Read(4, 150)), Rules, At(5)));
        Assert.Empty(LowerPressure.For(K3, tank.Then(Vented(4)), Rules, At(5)));

        var again = Read(5, 151);
        Assert.Equal(again.Id, LowerPressure.For(K3, tank.Then(Read(4, 150), again), Rules, At(5)).Single().Cause);
    }

    [Fact]
    public void A_vessel_without_a_rating_may_stand_under_none()
    {
        Assert.Equal(
            new Number("variant", "unrated"),
            LowerPressure.For(Plastic, After(Read(1, 2)), Rules, At(2)).Single().Because[0]
        );
        Assert.Empty(LowerPressure.For(Plastic, After(Read(1, 0)), Rules, At(2)));
    }

    [Fact]
    public void The_relief_valve_is_tested_by_the_calendar()
    {
        var first = Rinsed(1);
        var job = TestReliefValve.For(K3, After(first), Rules, At(2)).Single();

        Assert.Equal((first.Id, Instant("2027-02-01T00:00+01:00")), (job.Cause, job.DueAt));
        Assert.Equal(Instant("2027-02-02T00:00+01:00"), job.OverdueAt);
        Assert.Equal(
            Instant("2027-03-02T00:00+01:00"),
            TestReliefValve.For(K3, After(first, ReliefTested(2)), Rules, At(3)).Single().DueAt
        );
    }

    [Fact]
    public void A_relief_valve_that_failed_is_overdue_at_once()
    {
        var failed = ReliefTested(2, passed: false);
        var job = TestReliefValve.For(K3, After(Rinsed(1), failed), Rules, At(2)).Single();

        Assert.Equal((failed.Id, Urgency.Overdue), (job.Cause, job.At(At(2))));
    }

    [Fact]
    public void Every_rule_of_tanks_is_asked()
    {
        var tank = After(Triggered(0), Read(1, 180)) with
        {
            Soil = Soil.Soiled,
            Bath = new(new(At(0), Cause), BathKind.Citric, IsRinsed: false),
            Contents = new(Holding.Sanitizer, new(At(0), Cause)),
        };
        var floor = new Floor(Rules) { Tanks = [(K3, tank)] };

        Assert.Equal(
            [
                LowerPressure.Rule,
                DrainSanitizer.Rule,
                RecordAirDrying.Rule,
                WashSoiledTank.Rule,
                Repassivate.Rule,
                TestReliefValve.Rule,
            ],
            JobRules.For(floor, Subject.Tank(K3.Id), At(2)).Select(job => job.Rule)
        );
    }
}
