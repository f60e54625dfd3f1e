using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The tank met a mixed culture or an allergen.</summary>
public sealed record Exposed(Guid TankId, ExposureKind Kind, string What) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.ExposedAnew(new(Moment.Of(this), Kind, What));
}
