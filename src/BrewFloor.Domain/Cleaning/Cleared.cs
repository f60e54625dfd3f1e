using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Soft parts renewed after an exposure; with two washes and an inspection since, steel is clear of it.</summary>
public sealed record Cleared(Guid TankId, ExposureKind Kind) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
