using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What kept it out of service is mended.</summary>
public sealed record PutBackInService(Guid TankId, string Why) : LogEntry
{
    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        if (state.OutOfService is null)
        {
            yield return Objection.Impossible("not-out-of-service", new Number("tank", tank.Code));
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank with { OutOfService = null };
}
