using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Not to be filled or put under pressure until it is back.</summary>
public sealed record PutOutOfService(Guid TankId, string Why) : LogEntry
{
    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            OutOfService = new(Moment.Of(this), Why),
        };
}
