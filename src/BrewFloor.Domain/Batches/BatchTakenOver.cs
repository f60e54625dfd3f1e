using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Beer that was in the tank before the log began.</summary>
public sealed record BatchTakenOver(Guid TankId, NewBatch NewBatch) : LogEntry
{
    /// <summary>In L; null: nobody knows.</summary>
    public Volume? Volume { get; init; }

    public GravityRead? Gravity { get; init; }

    public DateTimeOffset? FilledAt { get; init; }

    public DateTimeOffset? PitchedAt { get; init; }

    /// <summary>Of the yeast in it, at least.</summary>
    public int? Generation { get; init; }

    public Guid BatchId => NewBatch.Id;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Handover> Handovers => [new(Subject.Tank(TankId), Subject.Batch(BatchId))];

    public override HandedOver? HandedOverBy(State giver) => Carried.By(giver);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Volume is { } volume ? Volumes.Nothing(volume) : [],
            .. Gravity?.Unreadable() ?? [],
            .. Occupied.Objections(tank, state),
            .. KnownAlready(before),
            .. Later(FilledAt),
            .. Later(PitchedAt),
            .. Volume is { } full && full.Liters > tank.Total.Liters
                ? [Fit.OverTotal(tank, full)]
                : Array.Empty<Objection>(),
        ];
    }

    private IEnumerable<Objection> KnownAlready(Floor before)
    {
        var (batch, state) = before.Batch(BatchId);
        if (state.Filled is not null)
        {
            yield return Objection.Impossible("batch-known", new Number("batch", batch.Called));
        }
    }

    private IEnumerable<Objection> Later(DateTimeOffset? before)
    {
        if (before is { } at && at > At)
        {
            yield return Objection.Impossible("after-taking-over", new Number("at", at));
        }
    }

    /// <summary>The tank is no emptier for what nobody wrote down: filled when the beer was, if that is known.</summary>
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.FilledWith(BatchId, Volume, FilledThen).Met(NewBatch.Carries, BatchId, Moment.Of(this)) with
        {
            Gas = PitchedThen is null ? tank.Gas : Gas.CarbonDioxide, // yeast has made it
        };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch
            .FilledIn(TankId, Volume, FilledThen)
            .WithGravity(TankId, Gravity, Moment.Of(this))
            .Met(handed)
            .Met(NewBatch.Carries) with
        {
            Filled = FilledThen,
            IsTakenOver = true,
            OriginalGravity = NewBatch.OriginalGravity,
            Pitches = PitchedThen is { } at
                ? [new(new(at, Id), CultureId: null, default, Generation ?? 0, IsAtLeast: true)]
                : [],
        };

    // Who knows the generation and when it was filled knows about when the yeast went in.
    private DateTimeOffset? PitchedThen => PitchedAt ?? (Generation is null ? null : FilledAt);

    private Moment FilledThen => new(FilledAt ?? At, Id);
}
