using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Beer moved from one tank to another.</summary>
/// <param name="FromId">The tank it left.</param>
/// <param name="ToId">The tank it went to.</param>
/// <param name="BatchId">The batch.</param>
/// <param name="Volume">In L, as it arrived.</param>
/// <param name="Left">In L, what stayed behind: nothing, or sediment and heel. The first tank is empty of beer only when <see cref="IsRest"/>.</param>
public sealed record Racked(Guid FromId, Guid ToId, Guid BatchId, Volume Volume, Volume Left) : LogEntry
{
    /// <summary>All of it: the first tank holds no beer any more.</summary>
    public bool IsRest { get; init; } = true;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(FromId), Subject.Tank(ToId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
