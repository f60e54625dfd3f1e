using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>A seal was renewed.</summary>
public sealed record GasketChanged(Guid TankId, string What) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
