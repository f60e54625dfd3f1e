using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Wort ran into an empty tank.</summary>
public sealed record Filled(Guid TankId, Guid BatchId, Volume Volume) : LogEntry
{
    /// <summary>The batch it brings into being; null when it was planned or filled elsewhere before.</summary>
    public NewBatch? NewBatch { get; init; }

    /// <summary>The volume was read as a level above the outlet, in mm, with the tank as it was then.</summary>
    public Length? Level { get; init; }

    public int? TankVersion { get; init; }

    /// <summary>Of the wort, in °C.</summary>
    public Temperature? Temperature { get; init; }

    public GravityRead? Gravity { get; init; }

    /// <summary>Onto the yeast of the batch before, left in the cone: words on which.</summary>
    public string? OntoCake { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Handover> Handovers =>
        [new(Subject.Batch(BatchId), Subject.Tank(TankId)), new(Subject.Tank(TankId), Subject.Batch(BatchId))];

    public override HandedOver? HandedOverBy(State giver) => Carried.By(giver);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Volumes.Nothing(Volume),
            .. Fit.LevelOutside(tank, Level),
            .. Gravity?.Unreadable() ?? [],
            .. Beer.IsGone(BatchId, before),
            .. Taken(tank, state),
            .. state.HoldsBeer ? [] : ReadyToFill.Objections(tank, state, before.Rules, At, Volume, Brings(before)),
            .. Fit.Objections(tank, Volume),
        ];
    }

    private IEnumerable<string> Brings(Floor before) =>
        [.. NewBatch?.Allergens ?? [], .. before.Batch(BatchId).State.Allergens];

    private IEnumerable<Objection> Taken(Tank tank, TankState state) =>
        state.BatchId == BatchId
            ? [Objection.Impossible("topped-up-wanted", new Number("tank", tank.Code))]
            : Occupied.Objections(tank, state);

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.FilledWith(BatchId, Volume, Moment.Of(this), Temperature)
            .Met([.. handed, .. NewBatch?.Carries ?? []], BatchId, Moment.Of(this));

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch
            .WithWort(Volume, WortGravity)
            .FilledIn(TankId, Volume, Moment.Of(this))
            .WithGravity(TankId, Gravity, Moment.Of(this))
            .Met([.. handed, .. NewBatch?.Carries ?? []]) with
        {
            Filled = batch.Filled ?? Moment.Of(this),
        };

    /// <summary>What was said of the wort comes before what was read in the tank.</summary>
    private SpecificGravity? WortGravity => NewBatch?.OriginalGravity ?? Gravity?.Gravity20;
}
