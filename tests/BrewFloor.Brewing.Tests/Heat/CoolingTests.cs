using BrewFloor.Brewing.Heat;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Heat;

public class CoolingTests
{
    private static readonly Crash Crash = new(Kg(101), SpecificHeat.Beer, Celsius(20), Celsius(2));

    private static LoggedTemperature Log(double hours, double celsius) =>
        new(TimeSpan.FromHours(hours), Celsius(celsius));

    private static Outcome<LearnedPassage> Learn(params LoggedTemperature[] log) =>
        CoolDown.Learn(Kg(101), SpecificHeat.Beer, Celsius(-3), log);

    [Theory] // arithmetic
    [Check("HE-04")]
    public void A_crash_takes_two_kilowatt_hours(Check check) =>
        (check with { Tolerance = "+-5; +-0.005" }).Agrees(
            Crash.Load().Value.Kilojoules,
            Crash.Load().Value.KilowattHours
        );

    [Theory] // lumped first order
    [Check("HE-05")]
    public void A_good_jacket_does_it_in_an_hour_and_a_half(Check check) =>
        check.Agrees(Crash.TimeWith(new(120), Celsius(-3)).Value.Hours);

    [Fact]
    public void Two_halves_of_a_crash_take_as_long_as_the_whole() =>
        Gen.Double[2.1, 19.9]
            .Sample(between =>
            {
                var half = Celsius(between);
                var first = (Crash with { To = half }).TimeWith(new(120), Celsius(-3)).Value;
                var second = (Crash with { From = half }).TimeWith(new(120), Celsius(-3)).Value;
                Assert.Equal(Crash.TimeWith(new(120), Celsius(-3)).Value.Hours, (first + second).Hours, 1e-9);
            });

    [Fact]
    public void What_was_logged_at_a_passage_teaches_that_passage() =>
        Gen.Select(Gen.Double[20, 500], Gen.Double[0.1, 0.5])
            .Sample(
                (watts, step) =>
                {
                    var perHour = watts * 3.6 / (101 * 4.05);
                    var log = Enumerable
                        .Range(0, 6)
                        .Select(i => Log(i * step, -3 + (23 * Math.Exp(-perHour * i * step))));
                    var learned = Learn([.. log.Where(l => l.Beer.DegreesCelsius > -2.7)]);
                    if (learned.IsDone)
                    {
                        Assert.Equal(watts, learned.Value.Passage.WattsPerKelvin, watts * 1e-6);
                        Assert.InRange(learned.Value.PlusMinus.Percent, 0, 1e-3);
                    }
                }
            );

    [Fact]
    public void Rough_readings_teach_it_roughly()
    {
        var learned = Learn(Log(0, 20), Log(0.5, 12.3), Log(1, 6.5), Log(1.5, 1.9)).Value; // of 120 W/K, 0.5 K rough

        Assert.InRange(learned.Passage.WattsPerKelvin, 110, 130);
        Assert.InRange(learned.PlusMinus.Percent, 0.1, 10);
    }

    [Fact]
    public void A_log_that_teaches_nothing_is_refused()
    {
        Assert.Equal(new Refusal("too-few-points", "cool-down", "3", ""), Learn(Log(0, 20), Log(1, 10)).Refusal);
        Assert.Equal("heat-passage", Learn(Log(0, 10), Log(1, 12), Log(2, 14)).Refusal?.What);
        Assert.Equal(("temperature", 3), Bad(Log(0, 20), Log(1, 10), Log(2, -3)));
        Assert.Equal(("after", 2), Bad(Log(1, 20), Log(1, 10), Log(2, 3)));
        Assert.Equal("coolant", CoolDown.Learn(Kg(101), SpecificHeat.Beer, Celsius(31), []).Refusal?.What);
        Assert.Equal("beer", CoolDown.Learn(Kg(0), SpecificHeat.Beer, Celsius(0), []).Refusal?.What);
        Assert.Equal("specific-heat", CoolDown.Learn(Kg(1), SpecificEntropy.Zero, Celsius(0), []).Refusal?.What);

        static (string?, int?) Bad(params LoggedTemperature[] log) =>
            (Learn(log).Refusal?.What, Learn(log).Refusal?.Row);
    }

    [Fact]
    public void A_crash_that_cannot_be_is_refused()
    {
        Assert.Equal("to", (Crash with { To = Celsius(21) }).Load().Refusal?.What);
        Assert.Equal("beer", (Crash with { Beer = Kg(0) }).Load().Refusal?.What);
        Assert.Equal("coolant", Crash.TimeWith(new(120), Celsius(2)).Refusal?.What);
        Assert.Equal("heat-passage", Crash.TimeWith(new(0), Celsius(-3)).Refusal?.What);
        Assert.Equal("gains", Crash.TimeBy(Power.FromWatts(500), Power.FromWatts(500)).Refusal?.What);
        Assert.Equal("chiller", Crash.TimeBy(Power.Zero, Power.Zero).Refusal?.What);
        Assert.Equal("area", HeatPassage.Of(Area.FromSquareMeters(-1), default).Refusal?.What);
    }

    [Fact] // 7363 kJ over 1.8 kW
    public void A_chiller_sets_its_own_pace() =>
        Assert.Equal(7363.0 / 1.8 / 3600, Crash.TimeBy(Power.FromWatts(2000), Power.FromWatts(200)).Value.Hours, 0.001);

    [Theory] // Fourier
    [Check("HE-06")]
    public void A_foamed_wall_lets_little_in(Check check)
    {
        var wall = Foam(25, null).Value;

        check.Agrees(WallGain.Into(wall, Celsius(20), Celsius(0)).Value.InWatts());
        Assert.True(Foam(25, 8).Value.WattsPerKelvin < wall.WattsPerKelvin);
    }

    [Theory]
    [Check("HE-24")]
    public void A_pad_has_a_third_to_spare(Check check)
    {
        check.Agrees(WallGain.PadFor(new(2), Celsius(5), Celsius(20)).Value.InWatts());
        Assert.Equal(0, WallGain.PadFor(new(2), Celsius(21), Celsius(20)).Value.InWatts());
    }

    [Fact]
    public void A_wall_that_cannot_be_is_refused()
    {
        Assert.Equal("thickness", Foam(0, null).Refusal?.What);
        Assert.Null(Foam(0, 8).Refusal);
        Assert.Equal("air-film", Foam(25, 0).Refusal?.What);
        Assert.Equal("room", WallGain.Into(new(2), Celsius(61), Celsius(4)).Refusal?.What);
        Assert.Equal("beer-temperature", WallGain.PadFor(new(2), Celsius(20), Celsius(-6)).Refusal?.What);
    }

    private static Outcome<HeatPassage> Foam(double millimetres, double? air) =>
        WallGain.Through(
            Area.FromSquareMeters(1.2),
            Length.FromMillimeters(millimetres),
            ThermalConductivity.FromWattsPerMeterKelvin(0.036),
            air is { } film ? HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(film) : null
        );
}
