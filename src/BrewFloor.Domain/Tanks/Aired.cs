using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Vent open and air blown or drawn through: no carbon dioxide left to absorb.</summary>
public sealed record Aired(Guid TankId) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return PressureGuards.Opening(tank, state);
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        (tank with { Gas = Gas.Air, Hot = null }).VentedBy(this);
}
