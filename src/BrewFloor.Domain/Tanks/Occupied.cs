using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>One tank holds one batch.</summary>
public static class Occupied
{
    /// <summary>Impossible: the tank holds beer.</summary>
    public static IEnumerable<Objection> Objections(Tank tank, TankState state)
    {
        if (state.HoldsBeer)
        {
            yield return Objection.Impossible("tank-occupied", new Number("tank", tank.Code));
        }
    }

    /// <summary>Impossible: the tank holds beer of another batch.</summary>
    public static IEnumerable<Objection> ByAnother(Tank tank, TankState state, Guid batchId) =>
        state.BatchId == batchId ? [] : Objections(tank, state);
}
