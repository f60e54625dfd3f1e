using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Objections that the steps of cleaning share.</summary>
public static class Steps
{
    /// <summary>Stop: the tank holds beer.</summary>
    public static IEnumerable<Objection> HoldsBeer(Tank tank, TankState state)
    {
        if (state.HoldsBeer)
        {
            yield return Objection.Stop("holds-beer", new Number("tank", tank.Code));
        }
    }

    /// <summary>Caution: a bath waits for its drying, and this liquid voids it.</summary>
    public static IEnumerable<Objection> VoidsBath(Tank tank, TankState state)
    {
        if (state.Bath is { } bath)
        {
            yield return Objection.Caution("voids-bath", new("tank", tank.Code), new("bath", bath.Moment.At));
        }
    }
}
