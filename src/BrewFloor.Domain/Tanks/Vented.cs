using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Pressure was let off until the gauge read nothing, and a way out was left open.</summary>
public sealed record Vented(Guid TankId) : LogEntry
{
    /// <summary>The batch in the tank, so that it knows it loses its gas again.</summary>
    public Guid? BatchId { get; init; }

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.VentedBy(this);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch.ShutIn(TankId, by: null);
}
