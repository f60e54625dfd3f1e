using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>An upright round tank, as calculators ask for it. Domes and dip tables are kept with the tank.</summary>
public static class TankAsks
{
    private const string Cone = "cone";

    private const string Flat = "flat";

    private static readonly Dictionary<string, DishKind> Dishes = new(StringComparer.Ordinal)
    {
        ["dished-6-percent"] = DishKind.FlangedAndDished,
        ["dished-din-28011"] = DishKind.Kloepper,
        ["dished-din-28013"] = DishKind.Korbbogen,
        ["elliptic"] = DishKind.Ellipsoidal,
    };

    internal static IReadOnlyList<Input> All { get; } =
    [
        Asks.Measured("diameter", Measure.Size, 1, 20_000, 500),
        Asks.Measured("cylinder-height", Measure.Size, 1, 20_000, 600),
        new ChoiceInput("bottom", [Cone, Flat, .. Dishes.Keys]),
        Asks.Measured("cone-angle", Measure.Angle, 20, 170, 60) with
        {
            OnlyWith = ("bottom", Cone),
        },
        new ChoiceInput("head", [Flat, .. Dishes.Keys]),
        Asks.Usual("outlet", Measure.Size, 0, 500, 38),
    ];

    /// <summary>A tank whose shape is known.</summary>
    /// <param name="given">To a calculator that asks for a tank.</param>
    /// <param name="shape">As measured; not with a dome, which nobody is asked for here.</param>
    public static Given With(this Given given, VesselShape shape)
    {
        var sized = given
            .With("diameter", shape.Diameter.Millimeters)
            .With("cylinder-height", shape.CylinderHeight.Millimeters)
            .With("outlet", shape.Outlet.Millimeters)
            .With("head", shape.Head is DishedHead head ? NameOf(head.Kind) : Flat);
        return shape.Bottom switch
        {
            DishedBottom dish => sized.With("bottom", NameOf(dish.Kind)),
            FlatBottom => sized.With("bottom", Flat),
            _ => sized.With("bottom", Cone).With("cone-angle", ConeAngle(shape)),
        };
    }

    internal static Outcome<VesselShape> Tank(Given given) =>
        VesselShape.Measured(
            given.Size("diameter"),
            given.Size("cylinder-height"),
            Bottom(given),
            given.Size("outlet"),
            Dishes.TryGetValue(given.Choice("head"), out var dish) ? new DishedHead(dish) : new FlatLid()
        );

    private static string NameOf(DishKind kind) => Dishes.First(dish => dish.Value == kind).Key;

    private static double ConeAngle(VesselShape shape) =>
        2 * 180 / Math.PI * Math.Atan((shape.Diameter - shape.Outlet) / 2 / shape.BottomHeight);

    private static VesselBottom Bottom(Given given) =>
        given.Choice("bottom") switch
        {
            Cone => new ConeBottom(Angle.FromDegrees(given.Number("cone-angle"))),
            Flat => new FlatBottom(),
            var dish => new DishedBottom(Dishes[dish]),
        };
}
