using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>The parts are on again.</summary>
public sealed record Refitted(Guid TankId, string Parts) : LogEntry, ITakesStock
{
    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            PartsOff = null,
            Refitted = Moment.Of(this),
        };
}
