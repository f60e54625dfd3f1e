using BrewFloor.Brewing.Tanks;
using BrewFloor.Web.Drawing;
using UnitsNet;

namespace BrewFloor.Web.Tests.Drawing;

/// <summary>Invented tanks, one of each kind of silhouette.</summary>
internal static class Tanks
{
    public static TankFigure Conical { get; } =
        new(Shape(520, 620, Cone(60), 38, new FlatLid()))
        {
            Legs = Mm(230),
            Top = DrawnTop.Lid,
            Vent = DrawnVent.Hose,
            HasSprayBall = true,
            Jacket = (Mm(90), Mm(470)),
            Working = L(120),
            Ports =
            [
                new DrawnPort(false, Mm(90), true),
                new DrawnPort(false, Mm(330), true),
                new DrawnPort(true, Mm(300), true),
            ],
        };

    public static TankFigure SlimConical { get; } =
        new(Shape(380, 640, Cone(60), 38, new FlatLid()))
        {
            Legs = Mm(300),
            Stand = DrawnStand.BracedLegs,
            Top = DrawnTop.Lid,
            Vent = DrawnVent.Airlock,
            Working = L(60),
            Ports = [new DrawnPort(false, Mm(120), true)],
        };

    public static TankFigure WideConical { get; } =
        new(Shape(680, 560, Cone(75), 38, new FlatLid()))
        {
            Legs = Mm(190),
            Top = DrawnTop.Lid,
            HasManway = true,
            Jacket = (Mm(60), Mm(420)),
            Working = L(200),
            Ports = [new DrawnPort(false, Mm(80), true), new DrawnPort(false, Mm(300), false)],
        };

    public static TankFigure PressureConical { get; } =
        new(Shape(540, 500, Cone(60), 38, new DomedHead(Mm(135))))
        {
            Legs = Mm(330),
            Jacket = (Mm(90), Mm(400)),
            Allowed = Pressure.FromKilopascals(150),
            HasReliefValve = true,
            Working = L(150),
            Ports =
            [
                new DrawnPort(false, Mm(70), true),
                new DrawnPort(false, Mm(230), true),
                new DrawnPort(true, Mm(310), true),
            ],
        };

    public static TankFigure Bright { get; } =
        new(Shape(620, 860, new DishedBottom(DishKind.Kloepper), 38, new DishedHead(DishKind.Kloepper)))
        {
            Legs = Mm(190),
            Jacket = (Mm(60), Mm(640)),
            Allowed = Pressure.FromKilopascals(200),
            HasReliefValve = true,
            Working = L(250),
            Ports = [new DrawnPort(false, Mm(160), true), new DrawnPort(false, Mm(420), true)],
        };

    public static TankFigure PlasticConical { get; } =
        new(Shape(450, 420, Cone(64), 50, new DomedHead(Mm(45))))
        {
            Legs = Mm(120),
            Stand = DrawnStand.Frame,
            Top = DrawnTop.ScrewCap,
            IsPlastic = true,
            Vent = DrawnVent.Airlock,
            Working = L(55),
            Ports = [new DrawnPort(true, Mm(220), true)],
        };

    public static TankFigure Bucket { get; } =
        new(Shape(340, 400, new FlatBottom(), 0, new FlatLid()))
        {
            Stand = DrawnStand.None,
            Top = DrawnTop.Bucket,
            IsPlastic = true,
            Taper = Mm(22),
            HasTap = true,
            Vent = DrawnVent.Airlock,
            Working = L(28),
        };

    public static IReadOnlyList<TankFigure> All { get; } =
    [Conical, SlimConical, WideConical, PressureConical, Bright, PlasticConical, Bucket];

    public static TankCondition Fermenting { get; } =
        new()
        {
            Volume = L(98),
            ColourEbc = 9,
            Stage = DrawnStage.Fermenting,
            Foam = L(8),
            Sediment = [new DrawnSediment(SedimentKind.Trub, L(2.4))],
            IsChilling = true,
        };

    public static Volume L(double litres) => Volume.FromLiters(litres);

    public static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static ConeBottom Cone(double degrees) => new(Angle.FromDegrees(degrees));

    private static VesselShape Shape(
        double diameter,
        double height,
        VesselBottom bottom,
        double outlet,
        VesselHead head
    ) => VesselShape.Measured(Mm(diameter), Mm(height), bottom, Mm(outlet), head).Value;
}
