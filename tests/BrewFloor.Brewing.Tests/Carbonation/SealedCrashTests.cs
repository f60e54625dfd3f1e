using BrewFloor.Brewing.Carbonation;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class SealedCrashTests
{
    private static SealedTank Tank(double beer, double headspace, double celsius = 20, double bar = 1.01325) =>
        new(Volume.FromLiters(beer), Volume.FromLiters(headspace), Celsius(celsius), Pressure.FromBars(bar));

    private static Refusal? Of(SealedTank tank, double to = 1) => SealedCrash.EndOf(tank, Celsius(to)).Refusal;

    [Theory] // mass balance, Carroll et al. 1991, Kell 1975, ideal gas
    [Check("CO-22")]
    public void A_tank_sealed_at_no_pressure_pulls_a_vacuum(Check check)
    {
        var end = SealedCrash.EndOf(Tank(90, 10), Celsius(1)).Value;

        check.Agrees(end.Settled.Bars, end.GasAlone.Bars);
    }

    [Theory] // mass balance
    [Check("CO-23")]
    public void Feeding_gas_holds_the_pressure(Check check) =>
        check.Agrees(SealedCrash.ToHold(Tank(90, 10), Celsius(1), Pressure.FromBars(1.01325)).Value.Grams);

    [Fact] // ideal gas by hand: 1e5 Pa · 0.1 m³ · 44.0095 g / (8.314462618 J/K · 293.15 K)
    public void A_bar_in_a_hundred_litres_of_gas_is_180_grams() =>
        Assert.Equal(
            180.560,
            SealedCrash.ToHold(Tank(0, 100), Celsius(20), Pressure.FromBars(2.01325)).Value.Grams,
            0.001
        );

    [Fact]
    public void Without_a_change_of_temperature_nothing_happens()
    {
        var end = SealedCrash.EndOf(Tank(90, 10), Celsius(20)).Value;

        Assert.Equal(1.01325, end.Settled.Bars, 1e-12);
        Assert.Equal(1.01325, end.GasAlone.Bars, 1e-12);
    }

    [Fact]
    public void Without_beer_only_the_gas_shrinks()
    {
        var end = SealedCrash.EndOf(Tank(0, 100), Celsius(1)).Value;

        Assert.Equal(end.GasAlone.Bars, end.Settled.Bars, 1e-12);
    }

    [Fact]
    public void Settled_beer_always_pulls_deeper_than_gas_alone() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[1, 500], Gen.Double[1, 40], Gen.Double[0, 0.99])
            .Sample(
                (beer, headspace, from, share) =>
                {
                    var end = SealedCrash.EndOf(Tank(beer, headspace, from), Celsius(from * share)).Value;
                    Assert.True(end.Settled < end.GasAlone);
                }
            );

    [Fact]
    public void The_gas_that_holds_the_end_pressure_is_none() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[1, 500])
            .Sample(
                (beer, headspace) =>
                {
                    var tank = Tank(beer, headspace);
                    var end = SealedCrash.EndOf(tank, Celsius(1)).Value.Settled;
                    Assert.Equal(0, SealedCrash.ToHold(tank, Celsius(1), end).Value.Grams, 1e-6);
                }
            );

    [Fact]
    public void A_tank_with_pressure_to_spare_needs_no_gas() =>
        Assert.Equal(0, SealedCrash.ToHold(Tank(90, 10, bar: 3), Celsius(1), Pressure.FromBars(1.01325)).Value.Grams);

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Equal("beer", Of(Tank(-1, 10))?.What);
        Assert.Equal("headspace", Of(Tank(90, -1))?.What);
        Assert.Equal("headspace", Of(Tank(0, 0))?.What);
        Assert.Equal(OutOfRange("temperature", "0", "40", "°C"), Of(Tank(90, 10, 40.1)));
        Assert.Equal("pressure-absolute", Of(Tank(90, 10, bar: 10.1))?.What);
        Assert.Equal(OutOfRange("crash-temperature", "0", "20", "°C"), Of(Tank(90, 10), to: 20.1));
        Assert.Equal(OutOfRange("crash-temperature", "0", "20", "°C"), Of(Tank(90, 10), to: -0.1));
        Assert.Equal(
            "pressure-absolute",
            SealedCrash.ToHold(Tank(90, 10), Celsius(1), Pressure.FromBars(10.1)).Refusal?.What
        );
    }

    [Fact]
    public void A_tank_full_to_the_lid_is_still_a_tank() => Assert.Null(Of(Tank(90, 0)));
}
