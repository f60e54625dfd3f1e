using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What the controller is told to hold.</summary>
public sealed record TemperatureSet(Guid TankId, Temperature Temperature) : LogEntry
{
    /// <summary>The batch in the tank: what it is decides how cold it may get.</summary>
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects =>
        BatchId is { } batch ? [Subject.Tank(TankId), Subject.Batch(batch)] : [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            TemperatureSet = new(Temperature, Moment.Of(this)),
        };
}
