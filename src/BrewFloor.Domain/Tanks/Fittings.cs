using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What is on a tank's ports: how it comes and goes, whether it fits, and what follows from it.</summary>
/// <remarks>A tank without ports in the inventory hears nothing of this, nor one of whose parts nothing is known.</remarks>
public static class Fittings
{
    /// <summary>How a part fits its port; null: one of the sizes is not known.</summary>
    public static ClampFit? FitOf(Port port, Fitting fitting) =>
        port.Mouth is { } mouth && fitting.Mouth is { } part
            ? ClampFit.Of(mouth, part, fitting.Through?.Reducer)
            : null;

    /// <summary>These are on, in place of what was on the same ports.</summary>
    public static Listed<Fitting> With(this Listed<Fitting> fitted, Listed<Fitting> on) =>
        on is [] ? fitted : [.. fitted.Without(f => on.Any(o => o.Port == f.Port)).Concat(on).OrderBy(f => f.Port)];

    /// <summary>The parts of these ports came off and lie about.</summary>
    public static TankState TakenOff(this TankState tank, Listed<int> ports)
    {
        Listed<Fitting> off = [.. tank.Fitted.Where(f => ports.Contains(f.Port))];
        return tank with
        {
            Fitted = tank.Fitted.Without(off.Contains),
            LyingAbout = [.. tank.LyingAbout.Without(f => f.IsReplacedBy(off)), .. off],
        };
    }

    /// <summary>These are on now. Whatever else came off still lies about, unless its port has another part.</summary>
    public static TankState PutOn(this TankState tank, Listed<Fitting> on) =>
        tank with
        {
            Fitted = tank.Fitted.With(on),
            LyingAbout = tank.LyingAbout.Without(f => f.IsReplacedBy(on)),
        };

    /// <summary>What lies about and whose port is free: what "on again" means.</summary>
    public static Listed<Fitting> ThatCameOff(this TankState tank) =>
        [.. tank.LyingAbout.Where(gone => tank.Fitted.All(f => f.Port != gone.Port))];

    /// <summary>Impossible: ports that the tank doesn't have, or one named twice.</summary>
    public static IEnumerable<Objection> Unknown(Tank tank, Listed<int> ports)
    {
        foreach (var number in ports.Where(number => tank.Port(number) is null).Distinct())
        {
            yield return Objection.Impossible("unknown-port", new("tank", tank.Code), new("port", number));
        }

        foreach (var twice in ports.GroupBy(number => number).Where(group => group.Count() > 1))
        {
            yield return Objection.Impossible("port-twice", new Number("port", twice.Key));
        }
    }

    /// <summary>Impossible: no clamp holds it. Caution: a lip where yeast and soil pass.</summary>
    public static IEnumerable<Objection> Misfits(Tank tank, Listed<Fitting> on) =>
        [
            .. Unknown(tank, [.. on.Select(fitting => fitting.Port)]),
            .. on.SelectMany(fitting => tank.Port(fitting.Port) is { } port ? Misfits(port, fitting) : []),
        ];

    /// <summary>Caution: a port whose part came off and on which nothing is now.</summary>
    public static IEnumerable<Objection> LeftOpen(Tank tank, TankState after)
    {
        foreach (var gone in after.ThatCameOff())
        {
            if (tank.Port(gone.Port) is { } port)
            {
                yield return Objection.Caution("port-left-open", new("port", port.Number), new("name", port.Name));
            }
        }
    }

    /// <summary>Stop!: the relief valve came off and isn't on again.</summary>
    public static IEnumerable<Objection> ReliefValveOff(Tank tank, TankState state)
    {
        if (state.LyingAbout.Any(f => f.Part is Part.ReliefValve) && !state.Has(Part.ReliefValve))
        {
            yield return Objection.HardStop("relief-valve-off", new Number("tank", tank.Code));
        }
    }

    /// <summary>Caution: through the spray ball, where none is among the parts that are known.</summary>
    public static IEnumerable<Objection> NoSprayBall(Tank tank, TankState state, Way how)
    {
        if (how is Way.SprayBall && tank.Ports is [_, ..] && state.Fitted is [_, ..] && !state.Has(Part.SprayBall))
        {
            yield return Objection.Caution("no-spray-ball", new Number("tank", tank.Code));
        }
    }

    // A relief valve is missed until there is one again, whatever closes its port; any other part is forgotten with its port.
    private static bool IsReplacedBy(this Fitting gone, Listed<Fitting> others) =>
        gone.Part is Part.ReliefValve
            ? others.Any(other => other.Part is Part.ReliefValve)
            : others.Any(other => other.Port == gone.Port);

    private static bool Has(this TankState state, Part part) => state.Fitted.Any(f => f.Part == part);

    private static IEnumerable<Objection> Misfits(Port port, Fitting fitting)
    {
        if (FitOf(port, fitting) is not { } fit)
        {
            yield break;
        }

        if (fit.Apart is { } apart)
        {
            yield return Apart(port, fitting, fit, apart);
        }
        else if (fit.Step is { } step && IsInTheWay(port, fitting))
        {
            yield return Objection.Caution(
                "bore-step",
                new("port", port.Number),
                new("name", port.Name),
                new("one_mm", Math.Round(step.One.Bore.Millimeters, 1)),
                new("other_mm", Math.Round(step.Other.Bore.Millimeters, 1))
            );
        }
    }

    private static Objection Apart(Port port, Fitting fitting, ClampFit fit, Joint apart)
    {
        var part = Ferrule.Of(fitting.Clamp!.Value).Name;
        var (one, other) =
            fitting.Through is not { } through ? (port.Size, part)
            : apart == fit.Joints[0] ? (port.Size, Ferrule.Of(through.Port).Name)
            : (Ferrule.Of(through.Part).Name, part);
        return Objection.Impossible(
            fitting.Through is null ? "clamps-apart" : "reducer-apart",
            new("port", port.Number),
            new("name", port.Name),
            new("one", one),
            new("one_mm", Math.Round(apart.One.Flange.Millimeters, 1)),
            new("other", other),
            new("other_mm", Math.Round(apart.Other.Flange.Millimeters, 1))
        );
    }

    // CP: what runs past a lip below leaves yeast and soil behind it; on the lid nothing runs.
    private static bool IsInTheWay(Port port, Fitting fitting) =>
        port.Place is PortPlace.Bottom or PortPlace.Cone || fitting.Part is Part.RackingArm;
}
