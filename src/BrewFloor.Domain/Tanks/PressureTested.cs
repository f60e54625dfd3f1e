using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The vessel was tested under pressure by somebody licensed to.</summary>
public sealed record PressureTested(Guid TankId, bool Passed) : LogEntry
{
    /// <summary>In kPa gauge.</summary>
    public Pressure? Pressure { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) =>
        Pressure is { } tested ? PressureGuards.Unreadable(tested) : [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            PressureTested = Moment.Of(this),
            PressureTestFailed = !Passed,
        };
}
