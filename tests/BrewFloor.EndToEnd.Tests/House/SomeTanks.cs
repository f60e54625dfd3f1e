using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>Invented tanks, one of each kind that the floor tells apart.</summary>
internal static class SomeTanks
{
    /// <summary>Stainless, no rating: 151 L to the brim.</summary>
    public static Tank Conical(Guid id, string code) =>
        new(id, code)
        {
            Type = TankType.ConicalFermenter,
            Material = Material.Stainless,
            HighestCleaning = Celsius(85),
            Strapping = Shape(520, 620, new ConeBottom(Angle.FromDegrees(60)), 38, new FlatLid()),
            Working = Litres(120),
            Cooling = Cooling.Jacket,
        };

    public static Tank PressureRated(Guid id, string code) =>
        new(id, code)
        {
            Type = TankType.PressureRatedConical,
            Material = Material.Stainless,
            HighestCleaning = Celsius(85),
            Strapping = Shape(540, 500, new ConeBottom(Angle.FromDegrees(60)), 38, new DomedHead(Mm(135))),
            Working = Litres(120),
            Rating = new(Pressure.FromKilopascals(150), RatingSource.Plate),
            Relief = new(Pressure.FromKilopascals(140), DateOnly.FromDateTime(FloorApp.Ago(24 * 60).DateTime)),
            HasVacuumRelief = true,
            Cooling = Cooling.Jacket,
        };

    public static Tank Bright(Guid id, string code) =>
        new(id, code)
        {
            Type = TankType.BrightTank,
            Material = Material.Stainless,
            HighestCleaning = Celsius(85),
            Strapping = Shape(620, 560, new DishedBottom(DishKind.Kloepper), 38, new DishedHead(DishKind.Kloepper)),
            Working = Litres(180),
            Rating = new(Pressure.FromKilopascals(200), RatingSource.Manual),
            Relief = new(Pressure.FromKilopascals(180), DateOnly.FromDateTime(FloorApp.Ago(24 * 60).DateTime)),
            HasVacuumRelief = true,
            Cooling = Cooling.Jacket,
        };

    public static Tank PlasticConical(Guid id, string code) =>
        new(id, code)
        {
            Type = TankType.PlasticConical,
            Material = Material.Plastic,
            HighestCleaning = Celsius(55),
            Strapping = Shape(450, 420, new ConeBottom(Angle.FromDegrees(64)), 50, new DomedHead(Mm(45))),
            Working = Litres(55),
        };

    public static Tank Bucket(Guid id, string code) =>
        new(id, code)
        {
            Type = TankType.Bucket,
            Material = Material.Plastic,
            HighestCleaning = Celsius(50),
            Strapping = Shape(340, 400, new FlatBottom(), 0, new FlatLid()),
            Working = Litres(27),
            IsOpenType = true,
        };

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);

    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static VesselShape Shape(
        double diameter,
        double height,
        VesselBottom bottom,
        double outlet,
        VesselHead head
    ) => VesselShape.Measured(Mm(diameter), Mm(height), bottom, Mm(outlet), head).Value;
}
