using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class PortEditsTests
{
    private static readonly Port Side = new(1, "Sample", PortPlace.Side) { Clamp = Clamp.OneAndAHalfInch };

    private static readonly Tank Cone = K3 with
    {
        Strapping = VesselShape
            .Measured(Mm(1000), Mm(1200), new ConeBottom(Angle.FromDegrees(60)), Mm(50), new FlatLid())
            .Value,
        Working = L(900),
    };

    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static IEnumerable<string> With(params ReadOnlySpan<Port> ports) =>
        TankEdits.New(Cone with { Ports = [.. ports] }, Role.Brewer).Select(o => o.Code);

    [Fact]
    public void An_ordinary_set_is_taken() =>
        Assert.Empty(
            With(
                Side with
                {
                    Height = Mm(900),
                    Around = Angle.FromDegrees(90),
                },
                new(2, "Lid", PortPlace.Lid) { Clamp = Clamp.FourInch, FromMiddle = Mm(0) },
                new(24, "Outlet", PortPlace.Bottom) { Flange = Mm(64), Bore = Mm(50) }
            )
        );

    [Fact]
    public void Each_has_a_number_and_a_name_of_its_own() =>
        Assert.Equal(
            ["port-twice", "port-named-twice"],
            With(Side, new(2, "Lid", PortPlace.Lid), new(2, "lid ", PortPlace.Lid))
        );

    [Theory]
    [InlineData(0)]
    [InlineData(25)]
    public void Numbers_are_1_to_24(int number) => Assert.Equal(["port-number"], With(Side with { Number = number }));

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("a name that is longer than anybody would say")]
    public void A_name_is_a_few_words(string name) => Assert.Equal(["port-name"], With(Side with { Name = name }));

    [Fact]
    public void A_port_is_within_the_tank()
    {
        Assert.Equal(["port-outside-tank"], With(Side with { Height = Mm(4000) }));
        Assert.Equal(["port-outside-tank"], With(Side with { Height = Mm(-1) }));
        Assert.Equal(["port-beside-lid"], With(new Port(1, "Lid", PortPlace.Lid) { FromMiddle = Mm(501) }));
        Assert.Equal(["port-around"], With(Side with { Around = Angle.FromDegrees(361) }));
    }

    [Fact]
    public void A_flat_bottom_has_no_port_in_its_cone() =>
        Assert.Equal(
            ["port-without-cone"],
            TankEdits
                .New(Bucket with { Ports = [new(1, "Tap", PortPlace.Cone)] }, Role.Brewer)
                .Select(objection => objection.Code)
        );

    [Fact]
    public void What_is_measured_makes_a_ferrule()
    {
        Assert.Equal(["port-half-measured"], With(Side with { Clamp = null, Flange = Mm(64) }));
        Assert.Equal(["port-bore-over-flange"], With(Side with { Bore = Mm(51) }));
        Assert.Empty(With(Side with { Bore = Mm(34) }));
    }

    [Fact]
    public void A_port_with_a_part_on_it_stays()
    {
        var state = new TankState(Cone.Id) { Fitted = [new(1, Part.SampleValve)] };
        var with = Cone with { Ports = [Side] };

        Assert.Equal(
            ["port-still-fitted"],
            TankEdits.Objections(with, Cone, state, Role.Brewer).Select(objection => objection.Code)
        );
        Assert.Empty(TankEdits.Objections(with, Cone, new TankState(Cone.Id), Role.Brewer));
    }
}
