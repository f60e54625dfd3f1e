using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Something hurt the film that keeps stainless stainless.</summary>
public sealed record Triggered(Guid TankId, Trigger By) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
