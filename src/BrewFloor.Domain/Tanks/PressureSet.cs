using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What the spunding valve or regulator is told to hold, in kPa gauge. Zero: vented.</summary>
public sealed record PressureSet(Guid TankId, Pressure Pressure) : LogEntry
{
    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
