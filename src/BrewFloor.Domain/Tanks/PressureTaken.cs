using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The gauge was read, in kPa gauge; below zero is a vacuum.</summary>
public sealed record PressureTaken(Guid TankId, Pressure Pressure) : LogEntry
{
    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => PressureGuards.Unreadable(Pressure);

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.AtPressure(Pressure, this);
}
