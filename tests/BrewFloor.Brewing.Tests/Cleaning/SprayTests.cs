using BrewFloor.Brewing.Cleaning;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Cleaning;

public class SprayTests
{
    private static readonly PumpCurve Pump = PumpCurve.Of([Point(0, 250), Point(40, 200), Point(80, 100)]).Value;

    private static PumpPoint Point(double litresPerMinute, double kilopascals) =>
        new(VolumeFlow.FromLitersPerMinute(litresPerMinute), Pressure.FromKilopascals(kilopascals));

    private static SprayDuty Duty(double flow, double spray = 100, double rise = 1, double friction = 20) =>
        new(
            VolumeFlow.FromLitersPerMinute(flow),
            Pressure.FromKilopascals(spray),
            Metres(rise),
            Pressure.FromKilopascals(friction)
        );

    [Theory] // Franks & Seiberling
    [Check("CI-01")]
    public void Half_a_metre_takes_forty_litres_a_minute(Check check) =>
        check.Agrees(SprayFlow.For(Metres(0.5), SprayFlow.Usual).Value.LitersPerMinute);

    [Theory] // NIST SP 811
    [Check("CI-02")]
    public void Two_gallons_a_foot_is_the_same_rule(Check check)
    {
        var rule = SprayFlow.OnEachFoot(VolumeFlow.FromUsGallonsPerMinute(2)).LitresPerMinuteAndMetre;

        check.Agrees(rule);
        Assert.Equal(SprayFlow.Usual.LitresPerMinuteAndMetre, rule, 0.2);
    }

    [Fact]
    public void Twice_as_wide_takes_twice_the_flow() =>
        Gen.Double[0.1, 10]
            .Sample(metres =>
                Assert.Equal(
                    2 * SprayFlow.For(Metres(metres), SprayFlow.Usual).Value.LitersPerMinute,
                    SprayFlow.For(Metres(2 * metres), SprayFlow.Usual).Value.LitersPerMinute,
                    1e-9
                )
            );

    [Fact]
    public void A_pump_is_held_against_ball_and_height_and_hose()
    {
        var good = Pump.Judge(Duty(40)).Value; // 100 + 20 + 9.79 of 200
        var bad = Pump.Judge(Duty(75)).Value; // of 112.5

        Assert.Equal((129.79, 200.0), (Math.Round(good.Needed.Kilopascals, 2), good.Available.Kilopascals));
        Assert.True(good.IsEnough);
        Assert.False(bad.IsEnough);
    }

    [Fact]
    public void A_curve_falls_between_its_points() =>
        Gen.Select(Gen.Double[0, 79], Gen.Double[0.01, 1])
            .Sample(
                (flow, more) =>
                    Pump.HeadAt(VolumeFlow.FromLitersPerMinute(flow)).Value
                    > Pump.HeadAt(VolumeFlow.FromLitersPerMinute(flow + more)).Value
            );

    [Fact]
    public void What_is_no_curve_is_refused_by_its_row()
    {
        Assert.Equal("too-few-points", PumpCurve.Of([Point(0, 1)]).Refusal?.Code);
        Assert.Equal(("head", 2), RowOf(Point(0, 100), Point(10, 101)));
        Assert.Equal(("flow", 2), RowOf(Point(10, 100), Point(10, 90)));
        Assert.Equal(OutOfRange("flow", "0", "80", "L/min"), Pump.Judge(Duty(81)).Refusal);
        Assert.Equal("spray-pressure", Pump.Judge(Duty(40, spray: -1)).Refusal?.What);
        Assert.Equal("rise", Pump.Judge(Duty(40, rise: 21)).Refusal?.What);
        Assert.Equal("friction", Pump.Judge(Duty(40, friction: -1)).Refusal?.What);
        Assert.Equal("diameter", SprayFlow.For(Metres(0), SprayFlow.Usual).Refusal?.What);
        Assert.Equal("wall-flow", SprayFlow.For(Metres(1), new(1)).Refusal?.What);

        static (string?, int?) RowOf(params PumpPoint[] points) =>
            (PumpCurve.Of(points).Refusal?.What, PumpCurve.Of(points).Refusal?.Row);
    }

    [Theory] // Torricelli
    [Check("CI-22")]
    public void A_vessel_runs_empty(Check check) => check.Agrees(Tank.TimeFrom(Metres(0.6)).Value.Seconds);

    [Fact] // the time is what the flow takes: dV = Q dt
    public void Time_and_flow_are_one_law() =>
        Gen.Double[0.01, 2]
            .Sample(level =>
            {
                var (high, low) = (level * 1.0001, level * 0.9999);
                var seconds = (Tank.TimeFrom(Metres(high)).Value - Tank.TimeFrom(Metres(low)).Value).Seconds;
                var litres = (high - low) * Tank.Surface.SquareMeters * 1000;
                Assert.Equal(1, Tank.FlowAt(Metres(level)).Value.LitersPerSecond * seconds / litres, 1e-6);
            });

    [Fact]
    public void A_hole_wider_than_the_tank_is_refused()
    {
        Assert.Equal("outlet", (Tank with { Hole = Area.FromSquareMeters(1) }).TimeFrom(Metres(1)).Refusal?.What);
        Assert.Equal("surface", (Tank with { Surface = Area.Zero }).TimeFrom(Metres(1)).Refusal?.What);
        Assert.Equal("discharge", (Tank with { Discharge = Percent(101) }).FlowAt(Metres(1)).Refusal?.What);
        Assert.Equal("level", Tank.FlowAt(Metres(21)).Refusal?.What);
    }

    private static Draining Tank =>
        new(
            Area.FromSquareMeters(Math.PI * 0.25 * 0.25),
            Area.FromSquareMeters(Math.PI * 0.0125 * 0.0125),
            Percent(60)
        );
}
