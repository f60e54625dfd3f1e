using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Water through the tank until it runs clear.</summary>
public sealed record Rinsed(Guid TankId, bool IsHot) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Steps.HoldsBeer(tank, state),
            .. Heat.InShutTank(tank, state, IsHot),
            .. Steps.VoidsBath(tank, state),
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var after = tank.Heated(IsHot, this) with { ChemicalOnWalls = null };
        return tank.HoldsBeer ? after : RinsedOut(after.Wetted(this));
    }

    // A clean tank stays clean under water; any other is rinsed. A wash counts once its cleaner is out.
    private TankState RinsedOut(TankState tank)
    {
        var endsWash = tank is { Washed: not null, RinsedAfterWash: null };
        var after = tank with
        {
            RinsedAfterWash = tank.Washed is null ? null : Moment.Of(this),
            SoiledBeforeRinse =
                tank.Washed is not null ? null
                : tank.Soil is Soil.Soiled ? tank.SoilSince
                : tank.SoiledBeforeRinse,
            ExposedTo = endsWash ? [.. tank.ExposedTo.Select(e => e.WashedOut(tank.Washed!.Value))] : tank.ExposedTo,
        };
        return after.WithSoil(tank.Soil is Soil.Clean ? Soil.Clean : Soil.Rinsed, this);
    }
}
