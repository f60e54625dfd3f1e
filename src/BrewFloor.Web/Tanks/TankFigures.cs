using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Drawing;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>From what a tank is to how it is drawn: its own sizes, and what its type usually has on it.</summary>
public static class TankFigures
{
    public static TankFigure FigureOf(this Tank tank)
    {
        var shape = tank.Strapping as VesselShape ?? Stretched(tank.Strapping);
        var figure = new TankFigure(shape)
        {
            IsPlastic = tank.Material is Material.Plastic,
            Working = tank.Working,
            Allowed = tank.PressureLimit,
            HasReliefValve = tank.Relief is not null,
            Jacket = tank.Cooling is Cooling.Jacket ? (shape.CylinderHeight * 0.15, shape.CylinderHeight * 0.85) : null,
        };
        return Standing(figure, tank.Type, shape);
    }

    /// <summary>With its own ports, and the spray ball only if it is there, as far as they are written down.</summary>
    public static TankFigure FigureOf(this Tank tank, TankState state)
    {
        var (figure, shape) = (tank.FigureOf(), tank.Strapping as VesselShape);
        return figure with
        {
            HasSprayBall = state.Fitted is [] ? figure.HasSprayBall : state.Fitted.Any(f => f.Part is Part.SprayBall),
            Ports =
            [
                .. tank
                    .Ports.Where(port => port is { Place: PortPlace.Side or PortPlace.Cone, Height: not null })
                    .Select(port => Drawn(port, shape, state.Fitted.Any(f => f.Port == port.Number))),
            ],
        };
    }

    // At the outline on the side where it is; on this small drawing those in front and behind stand at the nearer one.
    private static DrawnPort Drawn(Port port, VesselShape? shape, bool isFitted)
    {
        var isInCone = port.Place is PortPlace.Cone && port.Height < shape?.BottomHeight;
        var from = isInCone || shape is null ? Length.Zero : shape.BottomHeight;
        return new(isInCone, port.Height!.Value - from, isFitted, port.Around is { Degrees: > 180 });
    }

    private static TankFigure Standing(TankFigure figure, TankType type, VesselShape shape) =>
        type switch
        {
            TankType.ConicalFermenter => figure with
            {
                Top = DrawnTop.Lid,
                Stand = DrawnStand.Legs,
                Legs = Legs(shape),
                Vent = DrawnVent.Hose,
            },
            TankType.PressureRatedConical => figure with
            {
                Top = DrawnTop.Head,
                Stand = DrawnStand.BracedLegs,
                Legs = Legs(shape),
                HasSprayBall = true,
            },
            TankType.BrightTank => figure with { Top = DrawnTop.Head, Stand = DrawnStand.Legs, Legs = Legs(shape) },
            TankType.PlasticConical => figure with
            {
                Top = DrawnTop.ScrewCap,
                Stand = DrawnStand.Frame,
                Legs = Legs(shape),
                Vent = DrawnVent.Airlock,
            },
            _ => figure with
            {
                Top = DrawnTop.Bucket,
                Stand = DrawnStand.None,
                Vent = DrawnVent.Airlock,
                HasTap = true,
                Taper = shape.Diameter * 0.05,
            },
        };

    // Legs aren't in the inventory: a bucket goes under the valve (common practice, no source).
    private static Length Legs(VesselShape shape) =>
        Length.FromMillimeters(Math.Clamp(shape.Height.Millimeters * 0.25, 200, 600));

    // A dip table knows litres and levels, no widths: drawn as a cylinder that holds as much.
    private static VesselShape Stretched(IStrapping table)
    {
        var height = Math.Max(1, table.Height.Millimeters);
        var diameter = 2 * Math.Sqrt(table.Total.Liters * 1e6 / (Math.PI * height));
        return VesselShape
            .Measured(
                Length.FromMillimeters(Math.Clamp(diameter, 1, 20_000)),
                Length.FromMillimeters(Math.Min(height, 20_000)),
                new FlatBottom(),
                Length.Zero,
                new FlatLid()
            )
            .Value;
    }
}
