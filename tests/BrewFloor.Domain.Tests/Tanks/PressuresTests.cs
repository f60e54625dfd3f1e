using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using CsCheck;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class PressuresTests
{
    public static readonly TheoryData<double?, LogEntry[]> Known = new()
    {
        { 0, [] }, // a new tank stands open
        { 0, [Closed(1, Closure.Vented)] },
        { null, [Closed(1)] },
        { null, [Closed(1, Closure.Sealed)] },
        { 0, [Vented(1), Closed(2)] }, // shut at none, with nothing in it
        { 80, [Closed(1, Closure.Sealed), Read(2, 80)] },
        { null, [Read(1, 80), Set(2, 100)] }, // told, not read
        { 80, [Read(1, 80), Set(2, 0)] }, // told to let it off: still what the gauge said
        { 0, [Read(1, 80), Vented(2)] },
        { 0, [Read(1, 80), Opened(2)] },
        { 0, [Read(1, 80), Aired(2)] },
        { 50, [Purged(1, kPa: 50)] },
        { -20, [Read(1, -20)] }, // a vacuum is a reading too
        { null, [Drained(1, Closure.Sealed)] },
        { 0, [Drained(1, Closure.Closed)] },
    };

    [Theory]
    [MemberData(nameof(Known))]
    public void The_pressure_is_what_was_read_or_let_off_or_unknown(double? kPa, LogEntry[] log) =>
        Assert.Equal(kPa, After(log).PressureNow()?.Kilopascals);

    [Fact]
    public void Shut_with_beer_in_it_the_pressure_is_unknown_until_the_gauge_is_read()
    {
        var shut = After(Vented(1)).WithBeer().Then(Closed(2));

        Assert.Null(shut.PressureNow());
        Assert.Equal(KPa(0), shut.Then(Read(3, 0)).PressureNow());
    }

    public static readonly TheoryData<Gas, Closure, LogEntry[]> Standing = new()
    {
        { Gas.CarbonDioxide, Closure.Open, [Purged(1)] },
        { Gas.CarbonDioxide, Closure.Sealed, [Purged(1, kPa: 50)] },
        { Gas.CarbonDioxide, Closure.Vented, [Purged(1, kPa: 50), Vented(2)] },
        { Gas.CarbonDioxide, Closure.Open, [Purged(1), Opened(2)] }, // it lies in there for long
        { Gas.Air, Closure.Vented, [Purged(1, kPa: 50), Aired(2)] },
        { Gas.Air, Closure.Open, [Opened(1), Aired(2)] },
        { Gas.CarbonDioxide, Closure.Sealed, [Closed(1, Closure.Sealed)] },
        { Gas.CarbonDioxide, Closure.Sealed, [Set(1, 100)] },
        { Gas.CarbonDioxide, Closure.Sealed, [Set(1, 100), Set(2, 0)] }, // until it is vented
        { Gas.Air, Closure.Closed, [Drained(1)] },
        { Gas.CarbonDioxide, Closure.Closed, [Drained(1, underGas: true)] },
    };

    [Theory]
    [MemberData(nameof(Standing))]
    public void Gas_and_closure_are_as_the_last_entry_left_them(Gas gas, Closure closure, LogEntry[] log) =>
        Assert.Equal((gas, closure), (After(log).Gas, After(log).Closure));

    [Fact]
    public void The_first_reading_above_a_limit_is_remembered_until_one_is_not_above_it()
    {
        LogEntry[] log = [Read(1, 90), Read(2, 110), Read(3, 130), Read(4, 105)];

        Assert.Equal(At(2), After(log).AboveSince(KPa(100))!.Value.At);
        Assert.Null(After([.. log, Read(5, 100)]).AboveSince(KPa(100)));
        Assert.Equal(At(6), After([.. log, Read(5, 100), Read(6, 101)]).AboveSince(KPa(100))!.Value.At);
        Assert.Null(After([.. log, Vented(5)]).AboveSince(KPa(1)));
    }

    [Fact]
    public void For_any_readings_and_any_limit_it_is_the_first_of_the_last_run_above_it() =>
        Gen.Select(Gen.Int[-2, 8].Array[1, 30], Gen.Int[0, 8])
            .Sample(
                (readings, limit) =>
                {
                    var tank = After([.. readings.Select((kPa, i) => (LogEntry)Read(i, kPa))]);
                    var lastNotAbove = Array.FindLastIndex(readings, kPa => kPa <= limit);
                    DateTimeOffset? first = lastNotAbove == readings.Length - 1 ? null : At(lastNotAbove + 1);
                    return tank.AboveSince(KPa(limit))?.At == first;
                }
            );

    [Fact]
    public void A_sensor_that_climbs_all_day_leaves_a_small_state() =>
        Assert.Equal(12, After([.. Enumerable.Range(1, 500).Select(i => (LogEntry)Read(i, i))]).PressureSteps.Count);
}
