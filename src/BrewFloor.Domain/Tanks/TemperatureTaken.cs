using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The temperature of the tank's contents was read.</summary>
public sealed record TemperatureTaken(Guid TankId, Temperature Temperature) : LogEntry
{
    /// <summary>The batch in the tank, so that it remembers how warm it was.</summary>
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects =>
        BatchId is { } batch ? [Subject.Tank(TankId), Subject.Batch(batch)] : [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
