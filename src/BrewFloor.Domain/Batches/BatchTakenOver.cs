using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Beer that was in the tank before the log began.</summary>
public sealed record BatchTakenOver(Guid TankId, NewBatch NewBatch) : LogEntry
{
    /// <summary>In L; null: nobody knows.</summary>
    public Volume? Volume { get; init; }

    public GravityRead? Gravity { get; init; }

    public DateTimeOffset? FilledAt { get; init; }

    public DateTimeOffset? PitchedAt { get; init; }

    /// <summary>Of the yeast in it, at least.</summary>
    public int? Generation { get; init; }

    public Guid BatchId => NewBatch.Id;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
