using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>Valves, ports, gaskets taken off to be cleaned.</summary>
public sealed record PartsTakenOff(Guid TankId, string Parts) : LogEntry
{
    /// <summary>The ports with nothing on them now, by number; empty: not said.</summary>
    public Listed<int> Ports { get; init; }

    /// <summary>The batch in the tank, so that it knows it loses its gas.</summary>
    public Guid? BatchId { get; init; }

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return [.. PressureGuards.Opening(tank, state), .. Fittings.Unknown(tank, Ports)];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.OpenedBy(this).TakenOff(Ports) with
        {
            PartsOff = Moment.Of(this),
            Refitted = null,
        };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch.ShutIn(TankId, by: null);
}
