using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class PressureGuardsTests
{
    // Relief valve tested on 1 February 2026: due on 1 February 2027, 336 days after 2 March 2026.
    private const double LastDay = (336 * 24) - 8;

    [Theory]
    [InlineData(135, null)] // 90 % of the relief valve's 150 kPa, the lower of the two
    [InlineData(136, Level.Caution)]
    [InlineData(150, Level.Caution)]
    [InlineData(151, Level.HardStop)]
    public void A_set_point_is_held_against_the_lower_of_rating_and_relief_valve(double kPa, Level? level) =>
        Assert.Equal(level, After(Vented(0)).Says(Set(1, kPa)).SingleOrDefault()?.Level);

    [Fact]
    public void Over_the_limit_comes_with_its_numbers() =>
        Assert.Equal(
            [
                Objection.HardStop(
                    "over-pressure-limit",
                    new("tank", "K3"),
                    new("pressure", KPa(160)),
                    new("limit", KPa(150))
                ),
            ],
            After(Vented(0)).Says(Set(1, 160))
        );

    public static readonly TheoryData<LogEntry> Raisings =
    [
        Set(1, 10),
        Closed(1, Closure.Sealed),
        Purged(1, kPa: 10),
        Drained(1, Closure.Sealed),
    ];

    [Theory]
    [MemberData(nameof(Raisings))]
    public void Whatever_puts_a_vessel_under_pressure_wants_rating_and_relief_valve(LogEntry raising)
    {
        var tank = After(Vented(0), Sanitized(0.1));

        Assert.DoesNotContain("no-rating", tank.Says(raising).Codes());
        Assert.Equal(
            [("no-rating", Level.HardStop), ("no-relief-valve", Level.HardStop)],
            tank.Says(raising, K3 with { Rating = null, Relief = null })
                .Where(o => o.Level is Level.HardStop)
                .Select(o => (o.Code, o.Level))
        );
        Assert.Contains("no-relief-valve", tank.Says(raising, K3 with { Relief = null }).Codes());
    }

    [Fact]
    public void Beer_behind_a_shut_vent_can_build_pressure_and_an_empty_tank_cannot()
    {
        Assert.Contains("no-rating", After(Vented(0)).WithBeer().Says(Closed(1), Plastic).Codes());
        Assert.Empty(After(Vented(0)).Says(Closed(1), Plastic));
        Assert.Empty(After(Opened(0)).WithBeer().Says(Closed(1, Closure.Vented), Plastic));
    }

    [Theory]
    [InlineData(LastDay, false)] // on the day it is due
    [InlineData(LastDay + 24, true)]
    public void An_overdue_relief_valve_stops_raising_and_closing(double hour, bool stopped)
    {
        var tank = After(Vented(0));

        Assert.Equal(stopped ? ["relief-test-overdue"] : [], tank.Says(Set(hour, 100)).Codes());
        Assert.Equal(stopped ? ["relief-test-overdue"] : [], tank.Says(Closed(hour, Closure.Sealed)).Codes());
    }

    public static readonly TheoryData<LogEntry> Lowering =
    [
        Read(LastDay + 24, 200),
        Vented(LastDay + 24),
        Set(LastDay + 24, 0),
        Closed(LastDay + 24, Closure.Vented),
    ];

    [Theory]
    [MemberData(nameof(Lowering))]
    public void Reading_venting_and_lowering_are_never_stopped(LogEntry entry) =>
        Assert.Empty(
            After(Read(0, 250), ReliefTested(0.5, passed: false), PartsOff(0.6)).Says(entry, K3 with { Rating = null })
        );

    [Fact]
    public void A_test_in_the_log_counts_instead_of_an_older_one_in_the_inventory() =>
        Assert.Empty(After(Vented(0), ReliefTested(24)).Says(Set(LastDay + 24, 100)));

    [Fact]
    public void A_relief_valve_that_failed_stops_pressure_until_it_passed_or_was_replaced()
    {
        var failed = After(Vented(0), ReliefTested(1, passed: false));
        var replaced = K3 with { Relief = new(KPa(150), new(2026, 3, 3)) };

        Assert.Equal(["relief-valve-failed"], failed.Says(Set(2, 100)).Codes());
        Assert.Empty(failed.Then(ReliefTested(2)).Says(Set(3, 100)));
        Assert.Empty(failed.Says(Set(40, 100), replaced));
    }

    [Fact]
    public void A_vessel_that_failed_its_pressure_test_holds_none() =>
        Assert.Equal(
            ["pressure-test-failed"],
            After(Vented(0), Then(1, new PressureTested(K3.Id, Passed: false))).Says(Set(2, 100)).Codes()
        );

    public static readonly TheoryData<string[], LogEntry[]> Parts = new()
    {
        { ["parts-off"], [PartsOff(1)] },
        { ["not-leak-tested"], [PartsOff(1), Refitted(2)] },
        { [], [PartsOff(1), Refitted(2), LeakTested(3)] },
        { ["leaks"], [PartsOff(1), Refitted(2), LeakTested(3, passed: false)] },
        { ["not-leak-tested"], [Then(1, new GasketChanged(K3.Id, "lid"))] },
    };

    [Theory]
    [MemberData(nameof(Parts))]
    public void Pressure_waits_until_the_tank_is_whole_and_tight(string[] codes, LogEntry[] log)
    {
        var objections = After(log).Says(Set(9, 100));

        Assert.Equal(codes, objections.Codes());
        Assert.All(objections, o => Assert.Equal(Level.Stop, o.Level));
    }

    [Fact]
    public void A_tank_out_of_service_is_put_under_no_pressure() =>
        Assert.Equal(
            ["out-of-service"],
            After(Then(1, new PutOutOfService(K3.Id, "leg bent"))).Says(Set(2, 100)).Codes()
        );

    public static readonly TheoryData<LogEntry> Openings =
    [
        Opened(9),
        PartsOff(9),
        Aired(9),
        Then(9, new GasketChanged(K3.Id, "lid")),
    ];

    [Theory]
    [MemberData(nameof(Openings))]
    public void Nothing_is_opened_under_pressure_or_when_nobody_knows(LogEntry opening)
    {
        LogEntry[] sealedAtOne = [Closed(1, Closure.Sealed)];

        Assert.Equal([PressureGuards.Unknown(K3)], After(sealedAtOne).Says(opening));
        Assert.Equal(
            [Objection.HardStop("under-pressure", new("tank", "K3"), new("pressure", KPa(1)))],
            After([.. sealedAtOne, Read(2, 1)]).Says(opening)
        );
        Assert.Empty(After([.. sealedAtOne, Read(2, 0)]).Says(opening));
        Assert.Empty(After([.. sealedAtOne, Read(2, -5)]).Says(opening)); // a vacuum: opening lets it go
        Assert.Empty(After([.. sealedAtOne, Vented(2)]).Says(opening));
    }

    [Theory]
    [InlineData(-101, true)]
    [InlineData(-102, false)] // below nothing at all
    [InlineData(1000, true)]
    [InlineData(14500, false)] // Pa typed as kPa
    public void A_reading_is_refused_only_for_being_unreadable(double kPa, bool taken) =>
        Assert.Equal(taken ? [] : [Level.Impossible], After().Says(Read(1, kPa)).Select(o => o.Level));

    [Fact]
    public void No_set_point_is_below_nothing() =>
        Assert.Equal(["pressure-unreadable"], After().Says(Set(1, -1)).Codes());

    [Fact]
    public void Shut_as_open_contradicts_itself() =>
        Assert.Equal(["closed-as-open"], After().Says(Closed(1, Closure.Open)).Codes());

    [Fact]
    public void Gas_pushed_into_a_shut_tank_raises_its_pressure()
    {
        Assert.Contains("no-rating", After(Closed(1)).Says(Purged(2), Plastic).Codes());
        Assert.Empty(After(Vented(1)).Says(Purged(2), Plastic));
        Assert.Null(After(Vented(0), Closed(1), Purged(2)).PressureNow());
    }
}
