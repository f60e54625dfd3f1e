using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Sediment let out of the cone.</summary>
public sealed record Dumped(Guid TankId, Guid BatchId, Sediment What, Volume Volume) : LogEntry
{
    private const int Kept = 200;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.Without(BatchId, Volume);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.OutOf(TankId, Volume, l => l with { Dumped = Books.Sum(l.Dumped, Volume) }) with
        {
            Dumps = batch.Dumps.And(new(Moment.Of(this), TankId, What, Volume), Kept),
            DryHops = What is Sediment.Hops ? batch.DryHopsOutOf(TankId, At) : batch.DryHops,
        };
}
