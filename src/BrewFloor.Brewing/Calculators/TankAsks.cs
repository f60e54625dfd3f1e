using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>A cylinder on a cone, as calculators ask for it; other shapes are kept with the tank.</summary>
internal static class TankAsks
{
    public static IReadOnlyList<Input> Cone { get; } =
    [
        Asks.Measured("diameter", Measure.Size, 1, 20_000, 500),
        Asks.Measured("cylinder-height", Measure.Size, 1, 20_000, 600),
        Asks.Measured("cone-angle", Measure.Angle, 20, 170, 60),
        Asks.Usual("outlet", Measure.Size, 0, 500, 38),
    ];

    public static Outcome<VesselShape> Tank(Given given) =>
        VesselShape.Measured(
            given.Size("diameter"),
            given.Size("cylinder-height"),
            new ConeBottom(Angle.FromDegrees(given.Number("cone-angle"))),
            given.Size("outlet"),
            new FlatLid()
        );
}
