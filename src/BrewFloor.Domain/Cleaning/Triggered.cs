using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Something hurt the film that keeps stainless stainless.</summary>
public sealed record Triggered(Guid TankId, Trigger By) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.Hurt(By, this);
}
