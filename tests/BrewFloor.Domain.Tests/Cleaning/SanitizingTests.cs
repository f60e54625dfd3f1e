using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using CsCheck;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class SanitizingTests
{
    public static readonly TheoryData<double, Closure, LogEntry[]> Lasting = new()
    {
        { 72, Closure.Sealed, [] },
        { 24, Closure.Closed, [] },
        { 4, Closure.Open, [] },
        { 4, Closure.Vented, [] }, // under air
        { 14, Closure.Closed, [Closed(12, Closure.Vented)] }, // half of 24 h and half of 4 h
        { 48, Closure.Closed, [Closed(12, Closure.Sealed)] }, // half of 24 h and half of 72 h
        { 36, Closure.Closed, [Closed(8, Closure.Sealed), Closed(26)] }, // a third, a quarter, ten hours of 24
        { 24, Closure.Closed, [Closed(24, Closure.Sealed)] }, // all used up before
        { 40, Closure.Sealed, [Vented(36)] }, // under CO2: two hours free, then half of 4 h
        { 55, Closure.Sealed, [Vented(36), Closed(37, Closure.Sealed)] }, // an hour vented and shut again was an hour open
    };

    [Theory]
    [MemberData(nameof(Lasting))]
    public void Sanitizing_lasts_as_long_as_the_ways_it_stood_shut_allow(double hours, Closure held, LogEntry[] log)
    {
        var tank = SanitizedTank(held).Then(log);

        Assert.Equal(At(hours), tank.SanitizedUntil(Rules));
        Assert.Equal(Soil.Sanitized, Sanitizing.SoilNow(Bucket, tank, Rules, At(hours)));
        Assert.Equal(Soil.Clean, Sanitizing.SoilNow(Bucket, tank, Rules, At(hours, minutes: 1)));
        Assert.Equal(1, tank.SharesUsed(Rules, At(hours)), 9);
    }

    [Fact]
    public void A_sealed_type_that_was_opened_is_only_clean_and_an_open_type_counts_the_hours()
    {
        var tank = SanitizedTank(Closure.Closed).Then(Opened(6), Closed(7));

        Assert.Equal(Soil.Clean, Sanitizing.SoilNow(K3, tank, Rules, At(8)));
        Assert.Equal(Soil.Sanitized, Sanitizing.SoilNow(Bucket, tank, Rules, At(8)));
        Assert.Equal(At(19), tank.SanitizedUntil(Rules)); // a quarter closed, a quarter open, half closed
    }

    public static readonly TheoryData<LogEntry> Openings =
    [
        Opened(1),
        PartsOff(1),
        Then(1, new GasketChanged(K3.Id, "lid")),
    ];

    [Theory]
    [MemberData(nameof(Openings))]
    public void Whatever_takes_the_seal_off_opens_the_tank(LogEntry opening) =>
        Assert.Equal(Soil.Clean, Sanitizing.SoilNow(K3, SanitizedTank(Closure.Closed).Then(opening), Rules, At(2)));

    [Fact]
    public void Sanitizing_anew_forgets_how_it_stood_before() =>
        Assert.Equal(
            At(44),
            SanitizedTank(Closure.Open).Then(Opened(1), CleaningLogs.Sanitized(19), Drained(20)).SanitizedUntil(Rules)
        );

    [Fact]
    public void A_tank_that_was_never_sanitized_has_no_end_of_it() => Assert.Null(Soiled(0).SanitizedUntil(Rules));

    [Fact]
    public void Shares_start_at_nothing_and_never_fall() =>
        Gen.Select(AnyStanding, Gen.Double[-5, 100], Gen.Double[0, 50])
            .Sample(
                (log, hour, later) =>
                {
                    var tank = SanitizedTank(Closure.Closed).Then(log);
                    var used = tank.SharesUsed(Rules, At(hour));
                    return used >= 0 && tank.SharesUsed(Rules, At(hour + later)) >= used;
                }
            );

    [Fact]
    public void Splitting_a_stretch_changes_nothing() =>
        Gen.Select(AnyStanding, Gen.Double[0.5, 60])
            .Sample(
                (log, cut) =>
                {
                    LogEntry[] earlier = [.. log.Where(e => e.At < At(cut))];
                    var before = SanitizedTank(Closure.Closed).Then(earlier);
                    var split = before with
                    {
                        StretchesSinceDrained =
                        [
                            .. before.StretchesSinceDrained,
                            new(before.Closure, before.Gas, At(cut)),
                        ],
                    };
                    var (whole, parts) = (before.SanitizedUntil(Rules)!.Value, split.SanitizedUntil(Rules)!.Value);
                    return (whole - parts).Duration() <= TimeSpan.FromMicroseconds(1);
                }
            );

    [Fact]
    public void At_its_end_all_shares_are_used_and_a_minute_before_they_were_not() =>
        AnyStanding.Sample(log =>
        {
            var tank = SanitizedTank(Closure.Closed).Then(log);
            var until = tank.SanitizedUntil(Rules)!.Value;
            return Math.Abs(tank.SharesUsed(Rules, until) - 1) < 1e-9
                && tank.SharesUsed(Rules, until - TimeSpan.FromHours(2.1)) < 1; // up to 2 h nothing may be used
        });

    [Fact]
    public void However_often_it_is_opened_and_shut_the_state_stays_small_and_the_hours_add_up()
    {
        var minutes = Enumerable.Range(1, 100).Select(i => i / 60.0);
        var tank = SanitizedTank(Closure.Closed)
            .Then([
                .. minutes.Select((hour, i) => (LogEntry)Closed(hour, i % 2 == 0 ? Closure.Vented : Closure.Closed)),
            ]);

        Assert.InRange(tank.StretchesSinceDrained.Count, 1, 12);
        Assert.Equal(50 / 60.0 / 24 + (50 / 60.0 / 4), tank.SharesUsed(Rules, At(100 / 60.0)), 9);
    }

    // Up to nine changes in the first sixty hours.
    private static readonly Gen<LogEntry[]> AnyStanding = Gen.Select(
            Gen.Double[0.1, 60],
            Gen.Int[0, 3],
            (hour, what) =>
                what switch
                {
                    0 => (LogEntry)Closed(hour, Closure.Sealed),
                    1 => Closed(hour),
                    2 => Vented(hour),
                    _ => Opened(hour),
                }
        )
        .Array[0, 9]
        .Select(entries => entries.OrderBy(e => e.At).ToArray());

    // Drained at eight o'clock.
    private static TankState SanitizedTank(Closure held) =>
        Soiled(-9)
            .Then(Washed(-8), Rinsed(-7), Inspected(-6), CleaningLogs.Sanitized(-1))
            .Then(Drained(0, held, underGas: held is Closure.Sealed));
}
