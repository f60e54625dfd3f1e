using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What kept it out of service is mended.</summary>
public sealed record PutBackInService(Guid TankId, string Why) : LogEntry
{
    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
