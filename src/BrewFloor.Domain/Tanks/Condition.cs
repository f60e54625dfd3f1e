using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Whether a tank is whole and in service.</summary>
public static class Condition
{
    /// <summary>Stop: out of service.</summary>
    public static IEnumerable<Objection> OutOfService(Tank tank, TankState state)
    {
        if (state.OutOfService is { } since)
        {
            yield return Objection.Stop(
                "out-of-service",
                new("tank", tank.Code),
                new("since", since.Moment.At),
                new("why", since.Why)
            );
        }
    }

    /// <summary>Stop: parts are off.</summary>
    public static IEnumerable<Objection> PartsOff(Tank tank, TankState state)
    {
        if (state.PartsOff is { } off)
        {
            yield return Objection.Stop("parts-off", new("tank", tank.Code), new("since", off.At));
        }
    }

    /// <summary>Caution before sanitizing: refitted and not leak-tested since, or the last leak test failed.</summary>
    public static IEnumerable<Objection> NotTightToSanitize(Tank tank, TankState state) =>
        Leaks(tank, state, Level.Caution);

    /// <summary>Stop before pressure: refitted and not leak-tested since, or the last leak test failed.</summary>
    public static IEnumerable<Objection> NotTightForPressure(Tank tank, TankState state) =>
        Leaks(tank, state, Level.Stop);

    private static IEnumerable<Objection> Leaks(Tank tank, TankState state, Level level)
    {
        if (state.Leaks)
        {
            yield return new("leaks", level, [new("tank", tank.Code)]);
        }
        else if (state.Refitted is { } refitted)
        {
            yield return new("not-leak-tested", level, [new("tank", tank.Code), new("refitted", refitted.At)]);
        }
    }
}
