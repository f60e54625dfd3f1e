using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>The parts are on again.</summary>
public sealed record Refitted(Guid TankId, string Parts) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            PartsOff = null,
            Refitted = Moment.Of(this),
        };
}
