using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Valves, ports, gaskets taken off to be cleaned.</summary>
public sealed record PartsTakenOff(Guid TankId, string Parts) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return PressureGuards.Opening(tank, state);
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.OpenedBy(this) with
        {
            PartsOff = Moment.Of(this),
            Refitted = null,
        };
}
