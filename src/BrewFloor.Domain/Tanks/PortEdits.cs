using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What speaks against a tank's ports as they were written down.</summary>
internal static class PortEdits
{
    public static IEnumerable<Objection> ByThemselves(Tank tank) =>
        [.. Numbers(tank), .. Twice(tank), .. tank.Ports.SelectMany(port => Sizes(port).Concat(Outside(tank, port)))];

    /// <summary>A port with a part on it stays in the inventory: where else would the part be?</summary>
    public static IEnumerable<Objection> ByFittings(Tank after, TankState state) =>
        from fitting in state.Fitted
        where after.Port(fitting.Port) is null
        select Objection.Impossible("port-still-fitted", new Number("port", fitting.Port));

    private static IEnumerable<Objection> Numbers(Tank tank)
    {
        if (tank.Ports.Any(port => port.Number is < 1 or > Port.Most))
        {
            yield return Objection.Impossible("port-number", new("from", 1), new("to", Port.Most));
        }

        foreach (var port in tank.Ports.Where(port => port.Name.Trim().Length is 0 or > Port.LongestName))
        {
            yield return Objection.Impossible("port-name", new("port", port.Number), new("most", Port.LongestName));
        }
    }

    private static IEnumerable<Objection> Twice(Tank tank)
    {
        foreach (var group in tank.Ports.GroupBy(port => port.Number).Where(group => group.Count() > 1))
        {
            yield return Objection.Impossible("port-twice", new Number("port", group.Key));
        }

        foreach (
            var group in tank
                .Ports.GroupBy(port => port.Name.Trim(), StringComparer.OrdinalIgnoreCase)
                .Where(group => group.Count() > 1)
        )
        {
            yield return Objection.Impossible("port-named-twice", new Number("name", group.Key));
        }
    }

    private static IEnumerable<Objection> Sizes(Port port)
    {
        if (port.Flange is null && port.Bore is null)
        {
            yield break;
        }

        // Either alone is taken with the list's other half; without a size of the list it says nothing.
        if (port.Mouth is not { } mouth)
        {
            yield return Objection.Impossible("port-half-measured", new Number("port", port.Number));
        }
        else if (!(mouth.Bore.Millimeters > 0 && mouth.Bore < mouth.Flange))
        {
            yield return Objection.Impossible(
                "port-bore-over-flange",
                new("port", port.Number),
                new("bore_mm", mouth.Bore.Millimeters),
                new("flange_mm", mouth.Flange.Millimeters)
            );
        }
    }

    private static IEnumerable<Objection> Outside(Tank tank, Port port)
    {
        if (port.Place is PortPlace.Cone && !tank.HasCone)
        {
            yield return Objection.Impossible("port-without-cone", new("port", port.Number), new("tank", tank.Code));
        }

        if (port.Height is { } height && !(height.Millimeters >= 0 && height <= tank.Strapping.Height))
        {
            yield return Objection.Impossible(
                "port-outside-tank",
                new("port", port.Number),
                new("height", height),
                new("highest", tank.Strapping.Height)
            );
        }

        if (port.Around is { Degrees: not (>= 0 and <= 360) })
        {
            yield return Objection.Impossible("port-around", new("port", port.Number), new("from", 0), new("to", 360));
        }

        if (
            tank.Strapping is VesselShape shape
            && port.FromMiddle is { } from
            && !(from >= UnitsNet.Length.Zero && from <= shape.Diameter / 2)
        )
        {
            yield return Objection.Impossible(
                "port-beside-lid",
                new("port", port.Number),
                new("from_middle", from),
                new("highest", shape.Diameter / 2)
            );
        }
    }
}
