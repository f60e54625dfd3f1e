using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries about beer that stays, is measured, or goes out.</summary>
internal static class RandomBeer
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["batch-taken-over"] = TakenOver,
        ["packaged"] = Packaged,
        ["discarded"] = (r, floor) =>
            r.Beer(floor, HasLitres) is { } beer
                ? new Discarded(beer.Tank.Id, beer.Beer.Id, r.Litres(1, Booked(beer.State) / 3), "Sour")
                {
                    IsRest = r.Chance(0.3),
                }
                : null,
        ["dumped"] = (r, floor) =>
            r.Beer(floor, HasLitres) is { } beer
                ? new Dumped(
                    beer.Tank.Id,
                    beer.Beer.Id,
                    r.Any<Sediment>(),
                    r.Litres(0.2, Math.Min(3, Booked(beer.State) / 4))
                )
                : null,
        ["dry-hopped"] = (r, floor) =>
            r.Beer(floor, (_, _) => true) is { } beer
                ? new DryHopped(
                    beer.Tank.Id,
                    beer.Beer.Id,
                    "Pellets",
                    Mass.FromGrams(r.Whole(50, 900)),
                    r.Any<HopWay>()
                )
                : null,
        ["gravity"] = (r, floor) =>
            r.Beer(floor, (_, _) => true) is { } beer
                ? new GravityTaken(beer.Tank.Id, beer.Beer.Id, Read(NextGravity(r, beer.Beer)))
                : null,
        ["ph"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.HoldsBeer) is { } tank
                ? new PhTaken(tank.Thing.Id, r.Between(3.9, 5.4)) { BatchId = tank.State.BatchId }
                : null,
    };

    public static GravityRead Read(double gravity) =>
        new(Math.Round(gravity, 4), GravityScale.Sg2020, Instrument.DensityMeter, null);

    private static BatchTakenOver? TakenOver(RandomFloor r, Floor floor)
    {
        if (r.Tank(floor, RandomTanks.IsEmpty) is not { } tank)
        {
            return null;
        }

        return new BatchTakenOver(tank.Thing.Id, RandomTanks.NewBatch(r))
        {
            Volume = r.Chance(0.8) ? r.Litres(10, tank.Thing.Working.Liters) : null,
            Gravity = r.Chance(0.7) ? Read(r.Between(1.01, 1.05)) : null,
            FilledAt = r.Now.AddDays(-8),
            PitchedAt = r.Chance(0.7) ? r.Now.AddDays(-8).AddHours(2) : null,
            Generation = r.Chance(0.5) ? r.Whole(0, 6) : null,
        };
    }

    private static Packaged? Packaged(RandomFloor r, Floor floor)
    {
        if (r.Beer(floor, HasLitres) is not { } beer)
        {
            return null;
        }

        var isRest = r.Chance(0.5);
        var kegs = Math.Max(1, (int)(Booked(beer.State) / 10) - (isRest ? 0 : 2));
        return new Packaged(
            beer.Tank.Id,
            beer.Beer.Id,
            Volume.FromLiters(Math.Min(kegs * 10, Booked(beer.State))),
            [new(r.OneOf(ContainerKind.Keg, ContainerKind.Cask, ContainerKind.Bottle), Volume.FromLiters(10), kegs)]
        )
        {
            IsPurged = r.Chance(0.8),
            IsRest = isRest,
            Heel = isRest ? r.Litres(0, 0.5) : null,
        };
    }

    private static bool HasLitres(TankState state, BatchState beer) => Booked(state) > 2;

    private static double Booked(TankState state) => state.Contents.Volume?.Liters ?? 20;

    private static double NextGravity(RandomFloor r, BatchState beer)
    {
        var last = beer.Gravities is [.., var read] ? read.Gravity : beer.OriginalGravity;
        return Math.Max(1.005, (last?.Value ?? 1.05) - r.Between(0, 0.01));
    }
}
