using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>The ports of the demo's tanks and what is on them. All of them are invented.</summary>
internal static class Ports
{
    private static readonly Dictionary<string, Part> OnPort = new(StringComparer.Ordinal)
    {
        ["Spray ball"] = Part.SprayBall,
        ["Relief valve"] = Part.ReliefValve,
        ["Blow-off"] = Part.BlowOff,
        ["Thermowell"] = Part.Thermowell,
        ["Sample valve"] = Part.SampleValve,
        ["Racking arm"] = Part.RackingArm,
        ["Carbonation stone"] = Part.CarbonationStone,
        ["Outlet"] = Part.Valve,
        ["Tap"] = Part.Valve,
        ["Gauge"] = Part.Gauge,
        ["Hops"] = Part.BlankCap,
    };

    /// <summary>As its type usually has them; rated cones a wide port for hops and a gauge more.</summary>
    public static Tank WithPorts(this Tank tank)
    {
        var usual = TypicalPorts.Of(tank);
        return tank with
        {
            Ports =
                tank.Type is TankType.PressureRatedConical
                    ?
                    [
                        .. usual,
                        new(usual.Count + 1, "Hops", PortPlace.Lid)
                        {
                            Clamp = Clamp.FourInch,
                            FromMiddle = Length.FromMillimeters(210),
                            Around = Angle.FromDegrees(0),
                        },
                        new(usual.Count + 2, "Gauge", PortPlace.Side)
                        {
                            Clamp = Clamp.ThreeInch,
                            Height = tank.Strapping.Height * 0.82,
                            Around = Angle.FromDegrees(270),
                        },
                    ]
                    : usual,
        };
    }

    /// <summary>What is on every port; a gauge goes on a wide one through a reducer.</summary>
    public static Listed<Fitting> Fitted(this Tank tank) =>
        [
            .. tank.Ports.Select(port =>
                port is { Name: "Gauge", Clamp: { } wide }
                    ? new Fitting(port.Number, Part.Gauge)
                    {
                        Clamp = Clamp.OneAndAHalfInch,
                        Through = new Adapter(wide, Clamp.OneAndAHalfInch),
                    }
                    : new Fitting(port.Number, OnPort[port.Name]) { Clamp = port.Clamp }
            ),
        ];
}
