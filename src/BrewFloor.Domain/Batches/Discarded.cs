using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Beer poured away, and why.</summary>
public sealed record Discarded(Guid TankId, Guid BatchId, Volume Volume, string Why) : LogEntry
{
    /// <summary>All of it: the tank is empty.</summary>
    public bool IsRest { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
