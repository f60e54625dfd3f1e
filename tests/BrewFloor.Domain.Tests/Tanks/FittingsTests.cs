using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class FittingsTests
{
    /// <summary>P2 with ports: 1 lid 3 in, 2 lid 1 1/2 in, 3 side 1 1/2 in, 4 cone 1 1/2 in, 5 bottom DN 40.</summary>
    private static readonly Tank Ported = P2 with
    {
        Ports =
        [
            new(1, "Manway", PortPlace.Lid) { Clamp = Clamp.ThreeInch },
            new(2, "Relief", PortPlace.Lid) { Clamp = Clamp.OneAndAHalfInch },
            new(3, "Thermowell", PortPlace.Side) { Clamp = Clamp.OneAndAHalfInch },
            new(4, "Racking", PortPlace.Cone) { Clamp = Clamp.OneAndAHalfInch },
            new(5, "Outlet", PortPlace.Bottom) { Clamp = Clamp.Dn40 },
        ],
    };

    private static readonly Fitting Relief = On(2, Part.ReliefValve, Clamp.OneAndAHalfInch);
    private static readonly Fitting Arm = On(4, Part.RackingArm, Clamp.OneAndAHalfInch);
    private static readonly Fitting Well = On(3, Part.Thermowell, Clamp.OneAndAHalfInch);
    private static readonly Floor Seen = NewFloor.Where(Ported).And(Seeing(Relief, Arm, Well).On(0));

    private static Fitting On(int port, Part part, Clamp? clamp) => new(port, part) { Clamp = clamp };

    private static PartsSeen Seeing(params ReadOnlySpan<Fitting> fitted) => new(P2.Id, [.. fitted]);

    private static PartsTakenOff Off(params ReadOnlySpan<int> ports) => new(P2.Id, "Parts") { Ports = [.. ports] };

    private static Refitted Back(params ReadOnlySpan<Fitting> fitted) => new(P2.Id, "Parts") { Fitted = [.. fitted] };

    private static Fitting Through(Fitting fitting, Clamp port, Clamp part) =>
        fitting with
        {
            Through = new Adapter(port, part),
        };

    [Fact]
    public void A_thermowell_of_an_inch_and_a_half_is_too_small_for_a_three_inch_port()
    {
        var said = Seen.Says(Back(On(1, Part.Thermowell, Clamp.OneAndAHalfInch)).On(1));

        Assert.Equal(
            Objection.Impossible(
                "clamps-apart",
                new("port", 1),
                new("name", "Manway"),
                new("one", "3 in"),
                new("one_mm", 91d),
                new("other", "1 1/2 in"),
                new("other_mm", 50.5)
            ),
            said.About("clamps-apart")
        );
    }

    [Fact]
    public void Through_a_reducer_it_goes_on() =>
        Assert.Empty(
            Seen.Says(
                Back(Through(On(1, Part.Thermowell, Clamp.OneAndAHalfInch), Clamp.ThreeInch, Clamp.OneAndAHalfInch))
                    .On(1)
            ).Objections
        );

    [Theory]
    [InlineData(Clamp.TwoInch, Clamp.OneAndAHalfInch, "3 in", "2 in")]
    [InlineData(Clamp.ThreeInch, Clamp.TwoInch, "2 in", "1 1/2 in")]
    public void The_wrong_end_of_a_reducer_is_named(Clamp near, Clamp far, string one, string other)
    {
        var said = Seen.Says(Back(Through(On(1, Part.Thermowell, Clamp.OneAndAHalfInch), near, far)).On(1));

        Assert.Equal(
            [new("one", one), new("other", other)],
            said.About("reducer-apart")!.Numbers.Where(n => n.Name is "one" or "other")
        );
    }

    [Fact]
    public void A_step_in_the_bore_is_a_caution_at_the_outlet_and_none_on_the_lid()
    {
        Assert.Equal(
            Level.Caution,
            Seen.Says(Back(On(5, Part.Valve, Clamp.OneAndAHalfInch)).On(1)).LevelOf("bore-step")
        );
        Assert.Empty(Seen.Says(Back(On(2, Part.Gauge, Clamp.OneInch)).On(1)).Objections);
    }

    [Fact]
    public void A_measured_flange_comes_before_the_list()
    {
        var measured = Ported with
        {
            Ports = [.. Ported.Ports.Select(p => p.Number is 1 ? p with { Flange = Length.FromMillimeters(50.4) } : p)],
        };

        Assert.Empty(NewFloor.Where(measured).Says(Seeing(On(1, Part.Gauge, Clamp.OneAndAHalfInch)).On(0)).Objections);
    }

    [Fact]
    public void Of_a_size_that_nobody_knows_nothing_is_said() =>
        Assert.Empty(Seen.Says(Back(On(1, Part.Thermowell, clamp: null)).On(1)).Objections);

    [Fact]
    public void A_port_that_the_tank_does_not_have_is_impossible() =>
        Assert.Equal(
            ["unknown-port", "port-twice"],
            Seen.Says(Seeing(On(9, Part.BlankCap, null), Well, Well).On(1)).Codes()
        );

    [Fact]
    public void Writing_down_what_is_on_asks_for_no_leak_test()
    {
        Assert.Equal([Relief, Well, Arm], Seen.Of(P2).Fitted);
        Assert.Null(Seen.Of(P2).Refitted);
    }

    [Fact]
    public void What_came_off_is_on_again_as_it_was_when_nobody_says_otherwise()
    {
        var off = Seen.And(Off(3, 4).On(1));
        var back = off.And(Back().On(1, 9));

        Assert.Equal(([Relief], [Well, Arm]), (off.Of(P2).Fitted, off.Of(P2).LyingAbout));
        Assert.Equal(([Relief, Well, Arm], []), (back.Of(P2).Fitted, back.Of(P2).LyingAbout));
    }

    [Fact]
    public void A_port_forgotten_when_refitting_is_a_caution()
    {
        var said = Seen.And(Off(3, 4).On(1)).Says(Back(Arm).On(1, 9));

        Assert.Equal(
            Objection.Caution("port-left-open", new("port", 3), new("name", "Thermowell")),
            Assert.Single(said.Objections)
        );
    }

    [Fact]
    public void A_blank_cap_closes_it() =>
        Assert.Empty(
            Seen.And(Off(3, 4).On(1)).Says(Back(Arm, On(3, Part.BlankCap, Clamp.OneAndAHalfInch)).On(1, 9)).Objections
        );

    [Fact]
    public void No_pressure_while_the_relief_valve_is_off_even_with_its_port_capped()
    {
        var capped = Seen.And(
            Off(2).On(1),
            Back(On(2, Part.BlankCap, Clamp.OneAndAHalfInch)).On(1, 9),
            new LeakTested(P2.Id, Passed: true).On(1, 10)
        );
        var pressure = new PressureSet(P2.Id, KPa(50)).On(1, 11);

        Assert.Equal(Level.HardStop, capped.Says(pressure).LevelOf("relief-valve-off"));
        Assert.Null(capped.And(Seeing(Relief).On(1, 11)).Says(pressure).LevelOf("relief-valve-off"));
        Assert.Null(Seen.Says(pressure).LevelOf("relief-valve-off"));
    }

    [Fact]
    public void A_wash_through_a_spray_ball_that_is_not_there_is_a_caution()
    {
        var wash = new Washed(P2.Id, Agent.Acid, Way.SprayBall).On(1);

        Assert.Equal(Level.Caution, Seen.Says(wash).LevelOf("no-spray-ball"));
        Assert.Null(Seen.Says(wash with { How = Way.Soak }).LevelOf("no-spray-ball"));
        Assert.Null(
            Seen.And(Seeing(On(1, Part.SprayBall, Clamp.ThreeInch)).On(0, 9)).Says(wash).LevelOf("no-spray-ball")
        );
    }

    [Fact]
    public void A_tank_of_whose_parts_nothing_is_known_is_as_before()
    {
        var wash = new Washed(P2.Id, Agent.Acid, Way.SprayBall).On(1);

        Assert.Null(NewFloor.Says(wash).LevelOf("no-spray-ball"));
        Assert.Null(NewFloor.Where(Ported).Says(wash).LevelOf("no-spray-ball"));
        Assert.Null(NewFloor.And(Off().On(0)).Says(new PressureSet(P2.Id, KPa(50)).On(1)).LevelOf("relief-valve-off"));
    }
}
