using BrewFloor.Brewing.Tanks;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Tanks.Shapes;

namespace BrewFloor.Brewing.Tests.Tanks;

public class VesselShapeTests
{
    [Theory] // geometry: pi h³ tan²(half the included angle) / 3
    [Check("GE-01", "GE-02")]
    public void A_closed_cone_holds_what_the_textbook_says(Check check)
    {
        var (angle, depth) = (check.Id is "GE-01" ? 60 : 72, 300.0);
        var diameter = 2 * depth * Math.Tan(angle / 2.0 * Math.PI / 180);

        var tank = VesselShape.Measured(Mm(diameter), Mm(500), Cone(angle), Mm(0), new FlatLid()).Value;

        check.Agrees(tank.BottomVolume.Liters);
        Assert.Equal(depth, tank.BottomHeight.Millimeters, 1e-6);
    }

    [Theory] // numerical revolution of the true crown and knuckle profile
    [Check("GE-03", "GE-04", "GE-05")]
    public void A_dish_with_crown_and_knuckle_is_as_deep_and_holds_as_much_as_its_profile(Check check)
    {
        var kind = check.Id switch
        {
            "GE-03" => DishKind.FlangedAndDished,
            "GE-04" => DishKind.Kloepper,
            _ => DishKind.Korbbogen,
        };
        var tank = Dished(1000, kind);

        check.Agrees(tank.BottomVolume.CubicMeters, tank.BottomHeight.Meters);
        Assert.Equal(tank.BottomVolume.Liters, tank.HeadVolume.Liters, 1e-9);
        Assert.Equal(tank.BottomHeight, tank.HeadHeight);
    }

    [Theory] // geometry: pi D³ / 24
    [Check("GE-06")]
    public void An_ellipsoidal_dish_holds_a_twenty_fourth_of_pi_cubes(Check check) =>
        check.Agrees(Dished(1000, DishKind.Ellipsoidal).BottomVolume.CubicMeters);

    [Theory] // numerical integration
    [Check("GE-07", "GE-08", "GE-09")]
    public void Litres_at_a_level_follow_the_cone_and_the_cylinder(Check check)
    {
        var level = check.Id switch
        {
            "GE-07" => 150,
            "GE-08" => 303.11,
            _ => 600,
        };

        check.Agrees(Conical.VolumeAt(Mm(level)).Value.Liters);
        Assert.Equal(303.11, Conical.BottomHeight.Millimeters, 0.005);
    }

    [Theory] // geometry: pi (R + r) times the slant
    [Check("GE-10")]
    public void The_wall_of_the_cone_is_wetted_when_the_cone_is_full(Check check) =>
        check.Agrees(Conical.WettedArea(Conical.BottomHeight).Value.SquareMeters);

    [Fact]
    public void The_inside_is_cone_and_cylinder_and_lid()
    {
        const double cone = 0.24740; // GE-10
        const double wall = Math.PI * 0.4 * 0.6;
        const double lid = Math.PI * 0.04;

        Assert.Equal(cone + wall + lid, Conical.InsideArea.SquareMeters, 0.0001);
        Assert.Equal(cone + wall, Conical.WettedArea(Conical.Height).Value.SquareMeters, 0.0001);
    }

    [Fact]
    public void A_flat_floor_is_wetted_by_the_first_drop_and_by_nothing_before()
    {
        var bucket = VesselShape.Measured(Mm(400), Mm(500), new FlatBottom(), Mm(0), new FlatLid()).Value;

        Assert.Equal(0, bucket.WettedArea(Mm(0)).Value.SquareMeters);
        Assert.Equal(Math.PI * 0.04, bucket.WettedArea(Mm(1e-6)).Value.SquareMeters, 1e-6);
    }

    [Fact]
    public void A_hemisphere_on_top_is_half_a_ball()
    {
        var tank = VesselShape.Measured(Mm(600), Mm(100), new FlatBottom(), Mm(0), new DomedHead(Mm(300))).Value;

        Assert.Equal(2.0 / 3 * Math.PI * 0.027 * 1000, tank.HeadVolume.Liters, 1e-9);
        Assert.Equal((0.09 + 0.18 + (2 * 0.3 * 0.1)) * Math.PI, tank.InsideArea.SquareMeters, 1e-9);
    }

    [Fact]
    public void The_measured_height_of_a_cone_stands_above_its_angle()
    {
        var by = VesselShape.Measured(Mm(400), Mm(600), new ConeBottom(Degrees(60), Mm(310)), Mm(50), new FlatLid());

        Assert.Equal(Mm(310), by.Value.BottomHeight);
    }

    [Fact]
    public void Shapes_of_equal_measures_are_equal_whatever_unit_they_were_typed_in() =>
        Assert.Equal(
            Conical,
            VesselShape
                .Measured(
                    Length.FromCentimeters(40),
                    Length.FromMeters(0.6),
                    new ConeBottom(Degrees(60)),
                    Length.FromCentimeters(5),
                    new FlatLid()
                )
                .Value
        );

    [Fact]
    public void The_full_tank_is_the_sum_of_its_parts() =>
        Any.Sample(tank =>
        {
            var sum = tank.BottomVolume.Liters + tank.CylinderVolume.Liters + tank.HeadVolume.Liters;
            Assert.Equal(1, tank.Total.Liters / sum, 1e-12);
            Assert.Equal(1, tank.VolumeAt(tank.Height).Value.Liters / sum, 1e-12);
            Assert.Equal(0, tank.VolumeAt(Mm(0)).Value.Liters, 1e-9);
        });

    [Fact]
    public void Litres_to_level_and_back_lose_no_hundredth_of_a_litre() =>
        Gen.Select(Any, Gen.Double[0, 1])
            .Sample(
                (tank, share) =>
                {
                    var volume = Litres(tank.Total.Liters * share);
                    var level = tank.LevelOf(volume).Value;
                    Assert.InRange(level.Millimeters, 0, tank.Height.Millimeters);
                    Assert.Equal(volume.Liters, tank.VolumeAt(level).Value.Liters, 0.01);
                }
            );

    [Fact]
    public void A_higher_level_is_more_beer_and_more_wet_wall() =>
        Gen.Select(Any, Gen.Double[0, 1], Gen.Double[0, 1])
            .Where((_, a, b) => Math.Abs(a - b) > 1e-6)
            .Sample(
                (tank, a, b) =>
                {
                    var (low, high) = (tank.Height * Math.Min(a, b), tank.Height * Math.Max(a, b));
                    Assert.True(tank.VolumeAt(low).Value < tank.VolumeAt(high).Value);
                    Assert.True(tank.WettedArea(low).Value < tank.WettedArea(high).Value);
                }
            );

    [Fact] // the volume is what the outline sweeps: ties every closed form to the drawn profile
    public void Litres_agree_with_slices_of_the_outline() =>
        Any.Sample(
            tank =>
            {
                const int slices = 20_000;
                var step = tank.Height.Millimeters / slices;
                var litres = Enumerable
                    .Range(0, slices)
                    .Sum(i =>
                    {
                        var d = tank.DiameterAt(Mm((i + 0.5) * step)).Value.Millimeters;
                        return Math.PI / 4 * d * d * step / 1e6;
                    });
                Assert.Equal(1, tank.Total.Liters / litres, 1e-4);
            },
            iter: 50
        );

    [Fact] // the wall is the outline's length swept about the axis
    public void The_wall_agrees_with_slices_of_the_outline() =>
        Any.Sample(
            tank =>
            {
                const int slices = 20_000;
                var radii = Enumerable
                    .Range(0, slices + 1)
                    .Select(i => tank.DiameterAt(tank.Height * Math.Min(1, (double)i / slices)).Value.Meters / 2)
                    .ToArray();
                var step = tank.Height.Meters / slices;
                var wall = radii
                    .Zip(radii.Skip(1))
                    .Sum(r => Math.PI * (r.First + r.Second) * double.Hypot(step, r.Second - r.First));
                var disc = Math.PI / 4 * tank.Diameter.Meters * tank.Diameter.Meters;
                var flat = (tank.Bottom is FlatBottom ? disc : 0) + (tank.Head is FlatLid ? disc : 0);
                Assert.Equal(1, tank.InsideArea.SquareMeters / (wall + flat), 2e-3);
            },
            iter: 50
        );
}
