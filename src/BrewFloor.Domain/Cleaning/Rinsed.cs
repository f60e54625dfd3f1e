using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Water through the tank until it runs clear.</summary>
public sealed record Rinsed(Guid TankId, bool IsHot) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
