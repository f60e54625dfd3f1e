using BrewFloor.Brewing.Tanks;
using CsCheck;
using UnitsNet;

namespace BrewFloor.Brewing.Tests.Tanks;

/// <summary>The words the tank tests are written in.</summary>
internal static class Shapes
{
    public static Length Mm(double mm) => Length.FromMillimeters(mm);

    public static Angle Degrees(double degrees) => Angle.FromDegrees(degrees);

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static ConeBottom Cone(double degrees) => new(Degrees(degrees));

    /// <summary>400 mm wide with a 60° cone to a 50 mm outlet, as in checks GE-07 to GE-10.</summary>
    public static VesselShape Conical => VesselShape.Measured(Mm(400), Mm(600), Cone(60), Mm(50), new FlatLid()).Value;

    public static VesselShape Dished(double diameter, DishKind kind) =>
        VesselShape.Measured(Mm(diameter), Mm(800), new DishedBottom(kind), Mm(0), new DishedHead(kind)).Value;

    private static readonly Gen<DishKind> Kind = Gen.Enum<DishKind>();

    /// <summary>Any tank that can be, from a jar to a silo.</summary>
    public static readonly Gen<VesselShape> Any =
        from diameter in Gen.Double[50, 3000]
        from cylinder in Gen.Double[10, 6000]
        from outlet in Gen.Double[0, 0.5]
        from bottom in Gen.OneOf<VesselBottom>(
            Gen.Const<VesselBottom>(new FlatBottom()),
            Gen.Double[20, 170].Select(a => (VesselBottom)Cone(a)),
            Kind.Select(k => (VesselBottom)new DishedBottom(k))
        )
        from head in Gen.OneOf<VesselHead>(
            Gen.Const<VesselHead>(new FlatLid()),
            Gen.Double[0.05, 0.5].Select(h => (VesselHead)new DomedHead(Mm(h * diameter))),
            Kind.Select(k => (VesselHead)new DishedHead(k))
        )
        select VesselShape.Measured(Mm(diameter), Mm(cylinder), bottom, Mm(outlet * diameter), head).Value;
}
