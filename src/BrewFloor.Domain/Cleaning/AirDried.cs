using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Seen dry. After a bath this is the moment the film counts from.</summary>
public sealed record AirDried(Guid TankId) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
