using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>How much is in the tank, by level or by volume. The books follow it.</summary>
public sealed record LevelMeasured(Guid TankId, Volume Volume) : LogEntry
{
    public Guid? BatchId { get; init; }

    /// <summary>In mm above the outlet, when that was read.</summary>
    public Length? Level { get; init; }

    public int? TankVersion { get; init; }

    public Temperature? Temperature { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotNamed(TankId, BatchId, before),
            .. NothingIn(tank, state),
            .. Fit.LevelOutside(tank, Level),
            .. Volumes.BelowNothing(Volume),
            .. Volume.Liters > tank.Total.Liters ? [Fit.OverTotal(tank, Volume)] : Array.Empty<Objection>(),
        ];
    }

    private IEnumerable<Objection> NothingIn(Tank tank, TankState state)
    {
        if (BatchId is null && state.Contents.What is Holding.Nothing)
        {
            yield return Objection.Impossible("nothing-in-tank", new Number("tank", tank.Code));
        }
    }

    /// <summary>Also what was unknown is known now; beer only together with its batch, so that both books agree.</summary>
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.Contents.What is Holding.Nothing || tank.BatchId != BatchId
            ? tank
            : tank with
            {
                Contents = tank.Contents with { Volume = Volume },
            };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch.Measured(TankId, Volume);
}
