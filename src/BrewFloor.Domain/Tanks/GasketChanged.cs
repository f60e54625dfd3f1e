using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>A seal was renewed.</summary>
public sealed record GasketChanged(Guid TankId, string What) : LogEntry, ITakesStock
{
    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return PressureGuards.Opening(tank, state);
    }

    // A new seal is a part refitted: it is not tight until it was tested.
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.OpenedBy(this) with
        {
            GasketChanged = Moment.Of(this),
            Refitted = tank.PartsOff is null ? Moment.Of(this) : null,
        };
}
