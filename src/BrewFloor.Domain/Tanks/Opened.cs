using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>The lid, manway or a port was opened.</summary>
public sealed record Opened(Guid TankId) : LogEntry
{
    /// <summary>What was opened.</summary>
    public string? What { get; init; }

    /// <summary>The batch in the tank, so that it knows it loses its gas.</summary>
    public Guid? BatchId { get; init; }

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return PressureGuards.Opening(tank, state);
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.OpenedBy(this);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch.ShutIn(TankId, by: null);
}
