using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>More wort of the same batch, or water, or sugar solution, ran into a tank that holds it.</summary>
public sealed record ToppedUp(Guid TankId, Guid BatchId, Volume Volume) : LogEntry
{
    public Length? Level { get; init; }

    public int? TankVersion { get; init; }

    public Temperature? Temperature { get; init; }

    public GravityRead? Gravity { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), Subject.Batch(BatchId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Volumes.Nothing(Volume),
            .. Fit.LevelOutside(tank, Level),
            .. Gravity?.Unreadable() ?? [],
            .. ReadyToFill.VentClosed(tank, state, before.Rules, Volume),
            .. Fit.Objections(tank, Books.Sum(state.Contents.Volume ?? Litres.None, Volume)),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.With(BatchId, booked => Books.Sum(booked, Volume));

    /// <summary>The gravity is of what was added, so it moves the original gravity and is no reading of the beer.</summary>
    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.WithWort(Volume, Gravity?.Gravity20).FilledIn(TankId, Volume, Moment.Of(this));
}
