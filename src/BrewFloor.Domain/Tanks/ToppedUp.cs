using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>More wort of the same batch, or water, or sugar solution, ran into a tank that holds it.</summary>
public sealed record ToppedUp(Guid TankId, Guid BatchId, Volume Volume) : LogEntry
{
    public Length? Level { get; init; }

    public int? TankVersion { get; init; }

    public Temperature? Temperature { get; init; }

    public GravityRead? Gravity { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
