using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What leaves a tank that lets no gas in leaves a vacuum behind.</summary>
public static class Vacuum
{
    /// <summary>Caution before anything is let or pumped out: sealed at no pressure, or at a pressure nobody knows.</summary>
    /// <remarks>Common practice, no source: volume out needs the same volume of gas in.</remarks>
    public static IEnumerable<Objection> WhenLettingOut(Tank tank, TankState state)
    {
        if (!state.IsShut)
        {
            yield break;
        }

        if (state.PressureNow() is not { } pressure)
        {
            yield return Objection.Caution("sealed-pressure-unknown", new Number("tank", tank.Code));
        }
        else if (pressure <= Pressures.None)
        {
            yield return Objection.Caution("sealed-no-pressure", new("tank", tank.Code), new("pressure", pressure));
        }
    }
}
