using BrewFloor.Brewing.Tanks;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Tanks.Shapes;

namespace BrewFloor.Brewing.Tests.Tanks;

public class VesselShapeRefusalTests
{
    private static Refusal? Of(
        double diameter = 400,
        double cylinder = 600,
        VesselBottom? bottom = null,
        double outlet = 50,
        VesselHead? head = null
    ) =>
        VesselShape.Measured(Mm(diameter), Mm(cylinder), bottom ?? Cone(60), Mm(outlet), head ?? new FlatLid()).Refusal;

    private static Refusal OutOfRange(string what, string from, string to, string unit = "mm") =>
        new("out-of-range", what, from, to, unit);

    [Theory]
    [InlineData(0)]
    [InlineData(-400)]
    [InlineData(0.99)]
    [InlineData(20_000.1)]
    public void A_size_that_no_tank_has_is_refused_by_the_name_of_its_field(double size)
    {
        Assert.Equal(OutOfRange("diameter", "1", "20000"), Of(diameter: size));
        Assert.Equal(OutOfRange("cylinder-height", "1", "20000"), Of(cylinder: size));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(20_000)]
    public void The_ends_of_the_range_are_in_it(double size) =>
        Assert.Null(Of(diameter: size, cylinder: size, bottom: new FlatBottom(), outlet: 0));

    [Fact]
    public void Parts_that_make_a_tower_together_are_refused() =>
        Assert.Equal(OutOfRange("height", "1", "20000"), Of(cylinder: 19_700)); // and 303 mm of cone

    [Theory]
    [InlineData(400)]
    [InlineData(401)]
    [InlineData(-1)]
    public void An_outlet_as_wide_as_the_tank_is_refused(double outlet) =>
        Assert.Equal(OutOfRange("outlet", "0", "399.99"), Of(outlet: outlet));

    [Theory]
    [InlineData(19.9, false)]
    [InlineData(20, true)]
    [InlineData(170, true)]
    [InlineData(170.1, false)]
    public void A_cone_is_between_twenty_and_a_hundred_and_seventy_degrees(double degrees, bool accepted) =>
        Assert.Equal(accepted ? null : OutOfRange("cone-angle", "20", "170", "°"), Of(bottom: Cone(degrees)));

    [Theory]
    [InlineData(15.3, false)] // flatter than 170°
    [InlineData(15.4, true)]
    [InlineData(992.4, true)]
    [InlineData(992.5, false)] // steeper than 20°
    public void A_cone_by_height_keeps_to_the_same_angles(double height, bool accepted) =>
        Assert.Equal(
            accepted ? null : OutOfRange("cone-height", "15.32", "992.47"),
            Of(bottom: new ConeBottom(Height: Mm(height)))
        );

    [Fact]
    public void A_cone_needs_its_angle_or_its_height() =>
        Assert.Equal(new Refusal("missing", "cone-angle", "20", "170", "°"), Of(bottom: new ConeBottom()));

    [Theory]
    [InlineData(287, false)] // 303.1 mm by the angle, 15.2 mm of room
    [InlineData(289, true)]
    [InlineData(318, true)]
    [InlineData(319, false)]
    public void Angle_and_height_of_two_different_cones_are_refused(double height, bool accepted) =>
        Assert.Equal(
            accepted ? null : new Refusal("cone-contradicts", "cone-height", "287.96", "318.26", "mm"),
            Of(bottom: new ConeBottom(Degrees(60), Mm(height)))
        );

    [Theory]
    [InlineData(0, false)]
    [InlineData(200, true)]
    [InlineData(200.1, false)]
    public void A_dome_rises_at_most_half_its_width(double rise, bool accepted) =>
        Assert.Equal(accepted ? null : OutOfRange("dome-height", "1", "200"), Of(head: new DomedHead(Mm(rise))));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(903.2)]
    public void A_level_outside_the_tank_is_refused_with_its_height(double level)
    {
        Assert.Equal(OutOfRange("level", "0", "903.1"), Conical.VolumeAt(Mm(level)).Refusal);
        Assert.Equal(OutOfRange("level", "0", "903.1"), Conical.WettedArea(Mm(level)).Refusal);
        Assert.Equal(OutOfRange("level", "0", "903.1"), Conical.DiameterAt(Mm(level)).Refusal);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(90)]
    public void More_than_it_holds_has_no_level(double litres) =>
        Assert.Equal(OutOfRange("volume", "0", "89.88", "L"), Conical.LevelOf(Litres(litres)).Refusal);

    [Fact]
    public void What_is_not_a_number_never_becomes_a_length() =>
        Assert.ThrowsAny<ArgumentException>(() => Length.FromMillimeters(double.NaN));
}
