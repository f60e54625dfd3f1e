using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What the controller is told to hold.</summary>
public sealed record TemperatureSet(Guid TankId, Temperature Temperature) : LogEntry
{
    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
