using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Soft parts renewed after an exposure; with two washes and an inspection since, steel is clear of it.</summary>
public sealed record Cleared(Guid TankId, ExposureKind Kind) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        if (state.ExposedTo.All(exposure => exposure.Kind != Kind))
        {
            yield return Objection.Impossible("not-exposed", new Number("tank", tank.Code));
        }
        else if (tank.Material is Material.Plastic)
        {
            yield return Objection.Caution("plastic-never-clears", new Number("tank", tank.Code));
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            ExposedTo = [.. tank.ExposedTo.Select(e => e.Kind == Kind ? e with { SoftPartsRenewed = true } : e)],
        };
}
