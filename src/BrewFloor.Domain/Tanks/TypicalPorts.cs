using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What tanks of a type usually have: a start for whoever writes down their own, never taken for granted.</summary>
/// <remarks>Common practice, no source: names, sizes and places vary from maker to maker, so every one is looked at before it is saved.</remarks>
public static class TypicalPorts
{
    /// <summary>Numbered from 1; heights are shares of this tank's own.</summary>
    public static Listed<Port> Of(Tank tank)
    {
        Port[] ports = tank.Type switch
        {
            TankType.ConicalFermenter =>
            [
                Lid("Spray ball", Clamp.OneAndAHalfInch, tank, 0.4),
                .. Blow(tank),
                .. Cone(tank),
            ],
            TankType.PressureRatedConical =>
            [
                Lid("Spray ball", Clamp.OneAndAHalfInch, tank, 0.5),
                Lid("Relief valve", Clamp.OneAndAHalfInch, tank, 0.4) with
                {
                    Around = Angle.FromDegrees(270),
                },
                .. Blow(tank),
                .. Cone(tank),
            ],
            TankType.BrightTank =>
            [
                Lid("Spray ball", Clamp.OneAndAHalfInch, tank, 0.5),
                Lid("Relief valve", Clamp.OneAndAHalfInch, tank, 0.4) with
                {
                    Around = Angle.FromDegrees(270),
                },
                .. Side(tank),
                At("Carbonation stone", PortPlace.Side, Clamp.OneAndAHalfInch, tank, 0.2),
                new(0, "Outlet", PortPlace.Bottom) { Clamp = Clamp.OneAndAHalfInch },
            ],
            TankType.PlasticConical => [new(0, "Outlet", PortPlace.Bottom)],
            _ => [At("Tap", PortPlace.Side, null, tank, 0.08)],
        };
        return [.. ports.Select((port, index) => port with { Number = index + 1 })];
    }

    private static Port[] Blow(Tank tank) => [Lid("Blow-off", Clamp.OneAndAHalfInch, tank, 0) with { Around = null }];

    private static Port[] Cone(Tank tank) =>
        [
            .. Side(tank),
            At("Racking arm", PortPlace.Cone, Clamp.OneAndAHalfInch, tank, 0.6),
            new(0, "Outlet", PortPlace.Bottom) { Clamp = Clamp.OneAndAHalfInch },
        ];

    private static Port[] Side(Tank tank) =>
        [
            At("Thermowell", PortPlace.Side, Clamp.OneAndAHalfInch, tank, 0.45),
            At("Sample valve", PortPlace.Side, Clamp.OneAndAHalfInch, tank, 0.3),
        ];

    private static Port Lid(string name, Clamp clamp, Tank tank, double share) =>
        new(0, name, PortPlace.Lid)
        {
            Clamp = clamp,
            FromMiddle = tank.Strapping is VesselShape shape ? Rounded(shape.Diameter * share / 2) : null,
            Around = Angle.FromDegrees(90),
        };

    /// <param name="share">Of the cylinder, or of the cone.</param>
    private static Port At(string name, PortPlace place, Clamp? clamp, Tank tank, double share) =>
        new(0, name, place)
        {
            Clamp = clamp,
            Height = tank.Strapping is VesselShape shape
                ? Rounded(
                    place is PortPlace.Cone
                        ? shape.BottomHeight * share
                        : shape.BottomHeight + (shape.CylinderHeight * share)
                )
                : null,
            Around = Angle.FromDegrees(place is PortPlace.Cone ? 270 : 90),
        };

    private static Length Rounded(Length length) => Length.FromMillimeters(Math.Round(length.Millimeters / 10) * 10);
}
