using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Held water or gas without loss, or not.</summary>
public sealed record LeakTested(Guid TankId, bool Passed) : LogEntry
{
    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        Passed
            ? tank with
            {
                Refitted = null,
                LeakTested = Moment.Of(this),
                Leaks = false,
            }
            : tank with
            {
                Leaks = true,
            };
}
