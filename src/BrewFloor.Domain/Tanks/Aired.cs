using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Vent open and air blown or drawn through: no carbon dioxide left to absorb.</summary>
public sealed record Aired(Guid TankId) : LogEntry
{
    /// <summary>The batch in the tank, so that it knows it loses its gas.</summary>
    public Guid? BatchId { get; init; }

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return PressureGuards.Opening(tank, state);
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        (tank with { Gas = Gas.Air, Hot = null }).VentedBy(this);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch.ShutIn(TankId, by: null);
}
