using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Somebody wants this tank for a brew day.</summary>
public sealed record FillPlanned(Guid TankId, Guid BatchId, DateTimeOffset PlannedAt, Volume Volume) : LogEntry
{
    /// <summary>A batch that exists only as a plan yet.</summary>
    public NewBatch? NewBatch { get; init; }

    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Volumes.Nothing(Volume),
            .. Beer.IsGone(BatchId, before),
            .. Fit.Objections(tank, Volume),
            .. PlannedAlready(tank, state),
        ];
    }

    private IEnumerable<Objection> PlannedAlready(Tank tank, TankState state)
    {
        if (state.Planned is { } other && other.BatchId != BatchId)
        {
            yield return Objection.Caution("planned-already", new("tank", tank.Code), new("planned", other.At));
        }
    }

    /// <summary>The last plan counts.</summary>
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Planned = new(BatchId, PlannedAt, Volume, Moment.Of(this)),
        };

    /// <summary>What the wort is planned to be is not what it was: the original gravity comes with the filling.</summary>
    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch with
        {
            Planned = Moment.Of(this),
            PlannedAt = PlannedAt,
            Allergens = [.. batch.Allergens.Union(NewBatch?.Allergens ?? [], StringComparer.Ordinal)],
        };
}
