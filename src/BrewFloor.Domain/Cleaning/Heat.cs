using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>A hot tank that is shut is sucked in when it cools.</summary>
public static class Heat
{
    /// <summary>Of a shut tank of air and vapour at 80 °C this is left at 20 °C; less of steam alone.</summary>
    /// <remarks>0.47 bar absolute: ideal gas and water vapour after Buck; check CI-05.</remarks>
    private static readonly Pressure LeftWhenCold = Pressure.FromKilopascals(47);

    /// <summary>Stop!: a hot step in a shut tank, or a cold one in a shut tank that is still hot.</summary>
    public static IEnumerable<Objection> InShutTank(Tank tank, TankState state, bool isHot) =>
        state.IsShut ? Shutting(tank, state, isHot) : [];

    /// <summary>Stop!: it is still hot from its last step and would be shut.</summary>
    public static IEnumerable<Objection> Shutting(Tank tank, TankState state, bool isHot = false)
    {
        if (isHot || state.Hot is not null)
        {
            yield return Objection.HardStop("hot-and-shut", new("tank", tank.Code), new("absolute", LeftWhenCold));
        }
    }
}
