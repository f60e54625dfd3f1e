using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>The nine tanks: what they measure inside, what they stand. All of them are invented.</summary>
internal sealed class Cellar(Dice dice, Calendar calendar)
{
    public Tank K1 { get; } = Cone(dice, "K1", "Left cone", 640, 700, 240).WithPorts();

    public Tank K2 { get; } = Cone(dice, "K2", "Right cone", 640, 700, 240).WithPorts();

    public Tank K3 { get; } = Cone(dice, "K3", "Short cone", 500, 560, 120).WithPorts();

    public Tank P1 { get; } = PressureCone(dice, "P1", "Lager cone", 720, 820, 320, calendar.On(-760)).WithPorts();

    public Tank P2 { get; } = PressureCone(dice, "P2", "New cone", 560, 700, 175, calendar.On(-402)).WithPorts();

    public Tank B1 { get; } = Bright(dice, "B1", "Big bright tank", 640, 900, 320, calendar.On(-750)).WithPorts();

    public Tank B2 { get; } = Bright(dice, "B2", "Small bright tank", 500, 700, 150, calendar.On(-740)).WithPorts();

    public Tank S1 { get; } =
        new Tank(dice.Id("S1"), "S1")
        {
            Name = "Plastic cone",
            Type = TankType.PlasticConical,
            Material = Material.Plastic,
            HighestCleaning = Temperature.FromDegreesCelsius(50),
            Strapping = Shape(460, 520, new ConeBottom(Angle.FromDegrees(60)), 25, new FlatLid()),
            Working = Volume.FromLiters(84),
            Cooling = Cooling.Room,
            Heating = Heating.Belt,
        }.WithPorts();

    public Tank E1 { get; } =
        new Tank(dice.Id("E1"), "E1")
        {
            Name = "Pilot bucket",
            Type = TankType.Bucket,
            Material = Material.Plastic,
            HighestCleaning = Temperature.FromDegreesCelsius(45),
            Strapping = Shape(320, 390, new FlatBottom(), 0, new FlatLid()),
            Working = Volume.FromLiters(24),
            Cooling = Cooling.Room,
            IsOpenType = true,
        }.WithPorts();

    public Tank[] All => [K1, K2, K3, P1, P2, B1, B2, S1, E1];

    // 34 mm is the bore of the usual outlet ferrule.
    private static Tank Cone(Dice dice, string code, string name, double diameter, double cylinder, double working) =>
        new(dice.Id(code), code)
        {
            Name = name,
            Type = TankType.ConicalFermenter,
            Material = Material.Stainless,
            HighestCleaning = Temperature.FromDegreesCelsius(85),
            Strapping = Shape(
                diameter,
                cylinder,
                new ConeBottom(Angle.FromDegrees(60)),
                34,
                new DishedHead(DishKind.Kloepper)
            ),
            Working = Volume.FromLiters(working),
            Cooling = Cooling.Jacket,
        };

    private static Tank PressureCone(
        Dice dice,
        string code,
        string name,
        double diameter,
        double cylinder,
        double working,
        DateOnly tested
    ) =>
        Cone(dice, code, name, diameter, cylinder, working) with
        {
            Type = TankType.PressureRatedConical,
            Rating = new(Pressure.FromKilopascals(200), RatingSource.Plate),
            Relief = new(Pressure.FromKilopascals(180), tested),
            HasVacuumRelief = true,
        };

    private static Tank Bright(
        Dice dice,
        string code,
        string name,
        double diameter,
        double cylinder,
        double working,
        DateOnly tested
    ) =>
        new(dice.Id(code), code)
        {
            Name = name,
            Type = TankType.BrightTank,
            Material = Material.Stainless,
            HighestCleaning = Temperature.FromDegreesCelsius(85),
            Strapping = Shape(
                diameter,
                cylinder,
                new DishedBottom(DishKind.Kloepper),
                34,
                new DishedHead(DishKind.Kloepper)
            ),
            Working = Volume.FromLiters(working),
            HeadspaceWanted = 0.05,
            Cooling = Cooling.Jacket,
            Rating = new(Pressure.FromKilopascals(220), RatingSource.Manual),
            Relief = new(Pressure.FromKilopascals(180), tested),
            HasVacuumRelief = true,
        };

    private static VesselShape Shape(
        double diameter,
        double cylinder,
        VesselBottom bottom,
        double outlet,
        VesselHead head
    ) =>
        VesselShape
            .Measured(
                Length.FromMillimeters(diameter),
                Length.FromMillimeters(cylinder),
                bottom,
                Length.FromMillimeters(outlet),
                head
            )
            .Value;
}
