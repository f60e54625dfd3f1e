using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>How a tank stands changes: what every entry that opens, shuts or vents it writes into its state.</summary>
public static class Shutting
{
    // More changes than this within a sanitizing are summed up; the sum counts vented time under CO2 as open.
    private const int StretchesKept = 12;

    /// <summary>It stands so from now on. A stretch is counted only while a sanitizing is.</summary>
    public static TankState ShutAs(this TankState tank, Closure closure, Gas gas, DateTimeOffset at)
    {
        var after = tank with { Closure = closure, Gas = gas };
        var isNoChange = tank.Closure == closure && tank.Gas == gas;
        return tank.StretchesSinceDrained is [] || isNoChange
            ? after
            : (
                after with
                {
                    StretchesSinceDrained = [.. tank.StretchesSinceDrained, new(closure, gas, at)],
                }
            ).SummedUp();
    }

    /// <summary>A lid, a port or a part is off, so it is under no pressure.</summary>
    public static TankState OpenedBy(this TankState tank, LogEntry entry) =>
        (
            tank.StretchesSinceDrained is []
                ? tank
                : tank with
                {
                    OpenedSinceDrained = tank.OpenedSinceDrained ?? Moment.Of(entry),
                }
        )
            .ShutAs(Closure.Open, tank.Gas, entry.At)
            .AtPressure(Pressures.None, entry);

    /// <summary>A way out is open, so it is under no pressure.</summary>
    public static TankState VentedBy(this TankState tank, LogEntry entry) =>
        tank.ShutAs(tank.Closure is Closure.Open ? Closure.Open : Closure.Vented, tank.Gas, entry.At)
            .AtPressure(Pressures.None, entry);

    /// <summary>Nothing that was sanitized counts any more.</summary>
    public static TankState WithoutStretches(this TankState tank) =>
        tank with
        {
            StretchesSinceDrained = [],
            StoodSinceDrained = default,
            OpenedSinceDrained = null,
        };

    private static TankState SummedUp(this TankState tank)
    {
        var stretches = tank.StretchesSinceDrained;
        if (stretches.Count <= StretchesKept)
        {
            return tank;
        }

        var (stood, time) = (tank.StoodSinceDrained, stretches[1].From - stretches[0].From);
        return tank with
        {
            StretchesSinceDrained = [.. stretches.Skip(1)],
            StoodSinceDrained = stretches[0].Closure switch
            {
                Closure.Sealed => stood with { Sealed = stood.Sealed + time },
                Closure.Closed => stood with { Closed = stood.Closed + time },
                _ => stood with { Open = stood.Open + time },
            },
        };
    }
}
