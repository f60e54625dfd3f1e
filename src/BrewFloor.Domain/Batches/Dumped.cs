using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Sediment let out of the cone.</summary>
public sealed record Dumped(Guid TankId, Guid BatchId, Sediment What, Volume Volume) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
