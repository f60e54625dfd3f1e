using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The relief valve was made to open, and at what.</summary>
public sealed record ReliefValveTested(Guid TankId, bool Passed) : LogEntry
{
    /// <summary>Where it opened, in kPa gauge.</summary>
    public Pressure? OpenedAt { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) =>
        OpenedAt is { } opened ? PressureGuards.Unreadable(opened, lowest: Pressures.None) : [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            ReliefTested = Moment.Of(this),
            ReliefFailed = !Passed,
        };
}
