using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class TemperatureTests
{
    private static readonly Floor Full = After(FilledAt(1.050).On(0), Read(20).On(1));

    [Theory]
    [InlineData(2, 3.0, true)] // 1 K above is there
    [InlineData(2, 3.1, false)]
    [InlineData(6, 7.0, true)] // 6 °C is the warmest crash
    [InlineData(6.1, 6.0, false)]
    public void Beer_is_cold_when_it_has_come_within_1_K_of_a_cold_set_point(double set, double read, bool isCold) =>
        Assert.Equal(isCold, Full.And(SetTo(set).On(10), Read(read).On(11)).Of(Batch118).Cold is not null);

    [Fact]
    public void Cold_counts_from_the_first_reading_since_it_was_warmer()
    {
        var floor = Full.And(SetTo(2).On(10), Read(2).On(11), Read(2).On(12));

        Assert.Equal(Day(11), floor.Of(Batch118).Cold?.At);
        Assert.Null(floor.And(Read(9).On(13)).Of(Batch118).Cold);
        Assert.Equal(Day(14), floor.And(Read(9).On(13), Read(2).On(14)).Of(Batch118).Cold?.At);
    }

    [Fact]
    public void A_batch_in_two_tanks_is_cold_when_both_are()
    {
        var floor = After(Filled(900).On(0), Filled(450, P2).On(0), SetTo(2).On(9), SetTo(2, P2).On(9));
        var one = floor.And(Read(2).On(10), Read(15, P2).On(10, hour: 9));

        Assert.Null(one.Of(Batch118).Cold);
        Assert.Equal(Day(12), one.And(Read(2, P2).On(12)).Of(Batch118).Cold?.At);
    }

    [Fact]
    public void The_batch_remembers_the_last_reading_and_the_set_point_of_then()
    {
        var last = Full.And(SetTo(18).On(2), Read(19).On(3), SetTo(12).On(4)).Of(Batch118).LastTemperature!;

        Assert.Equal((C(19), C(18)), (last.Read.Temperature, last.SetPoint));
    }

    [Fact]
    public void Only_peaks_that_no_later_reading_reaches_are_kept() =>
        Assert.Equal(
            [C(22), C(19)],
            Full.And(Read(21).On(2), Read(22).On(3), Read(18).On(4), Read(19).On(5))
                .Of(Batch118)
                .TemperaturePeaks.Select(peak => peak.Temperature)
        );

    [Fact]
    public void A_peak_reached_again_is_kept_once_with_its_later_day() =>
        Assert.Equal([Day(3)], Full.And(Read(20).On(3)).Of(Batch118).TemperaturePeaks.Select(peak => peak.At));

    [Theory]
    [InlineData(-20, false)]
    [InlineData(-20.1, true)]
    [InlineData(130, false)]
    [InlineData(130.1, true)]
    public void A_temperature_no_cellar_has_is_unreadable(double celsius, bool isRefused)
    {
        Level? refused = isRefused ? Level.Impossible : null;

        Assert.Equal(refused, Full.Says(Read(celsius).On(2)).LevelOf("temperature-unreadable"));
        Assert.Equal(refused, NewFloor.Says(SetTo(celsius, P2).On(2)).LevelOf("temperature-unreadable"));
    }

    [Fact]
    public void A_sensor_that_knows_only_the_tank_is_read() =>
        Assert.Empty(Full.Says((Read(19) with { BatchId = null }).On(2)).Objections);

    [Theory]
    [InlineData(19, 20.5, true)] // warmed by more than a probe is off
    [InlineData(19, 20, false)]
    [InlineData(19, 12, false)]
    public void A_shut_tank_that_warmed_has_a_pressure_nobody_knows(double first, double then, bool isUnknown) =>
        Assert.Equal(
            isUnknown,
            Full.And(Read(first).On(2))
                .Standing(K3, t => BeerTests.Sealed(t, 50))
                .And(Read(then).On(3))
                .Of(K3)
                .PressureNow()
                is null
        );

    [Theory]
    [InlineData(30, true)]
    [InlineData(30.5, false)]
    public void A_tank_read_cold_is_hot_no_more(double celsius, bool isOver) =>
        Assert.Equal(
            isOver,
            NewFloor
                .Standing(K3, t => t with { Hot = new(Day(0), Guid.Empty) })
                .And((Read(celsius) with { BatchId = null }).On(0, hour: 10))
                .Of(K3)
                .Hot
                is null
        );

    [Fact]
    public void A_set_point_over_beer_names_the_batch() =>
        Assert.Equal(Level.Impossible, Full.Says(SetTo(10).On(2)).LevelOf("batch-not-named"));

    [Theory]
    [InlineData(25, 20.0, Level.Stop)]
    [InlineData(20, 20.0, null)]
    [InlineData(15, 12.0, Level.Stop)]
    [InlineData(21, null, Level.Stop)] // nobody read it: a room has 20 °C
    [InlineData(20, null, null)]
    public void Heating_an_empty_tank_is_stopped(double set, double? read, Level? level)
    {
        var floor = read is { } celsius ? After((Read(celsius, S1) with { BatchId = null }).On(0)) : NewFloor;

        Assert.Equal(level, floor.Says(SetTo(set, S1).On(1)).LevelOf("heating-empty"));
    }

    [Fact]
    public void A_full_tank_or_one_without_heating_is_told_any_warmth()
    {
        Assert.Null(After(Filled(45, S1).On(0)).Says(SetTo(25, S1, Batch118).On(1)).About("heating-empty"));
        Assert.Null(NewFloor.Says(SetTo(25).On(1)).About("heating-empty"));
    }
}
