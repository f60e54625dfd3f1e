using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Pressure was let off until the gauge read nothing, and a way out was left open.</summary>
public sealed record Vented(Guid TankId) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.VentedBy(this);
}
