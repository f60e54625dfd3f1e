using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries that fill, move and measure.</summary>
internal static class RandomTanks
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["tank-taken-over"] = TakenOver,
        ["fill-planned"] = Planned,
        ["filled"] = Filled,
        ["topped-up"] = ToppedUp,
        ["racked"] = Racked,
        ["emptied"] = Emptied,
        ["level-measured"] = Measured,
        ["temperature"] = (r, floor) =>
            r.Tank(floor, (_, _) => true) is { } tank
                ? new TemperatureTaken(tank.Thing.Id, Temperature.FromDegreesCelsius(r.Between(1, 24)))
                {
                    BatchId = tank.State.BatchId,
                }
                : null,
        ["temperature-set"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.HoldsBeer) is { } tank
                ? new TemperatureSet(tank.Thing.Id, Temperature.FromDegreesCelsius(r.Between(2, 22)))
                {
                    BatchId = tank.State.BatchId,
                }
                : null,
        ["pressure"] = (r, floor) =>
            new PressureTaken(r.TankId(floor), Pressure.FromKilopascals(r.Chance(0.6) ? 0 : r.Between(-5, 160))),
        ["pressure-set"] = (r, floor) =>
            r.Tank(floor, (tank, _) => tank.PressureLimit is not null) is { } tank
                ? new PressureSet(tank.Thing.Id, Pressure.FromKilopascals(r.Chance(0.5) ? 0 : r.Between(10, 150)))
                : null,
        ["out-of-service"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.OutOfService is null) is { } tank
                ? new PutOutOfService(tank.Thing.Id, "Seal drips")
                : null,
        ["back-in-service"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.OutOfService is not null) is { } tank
                ? new PutBackInService(tank.Thing.Id, "Mended")
                : null,
    };

    public static NewBatch NewBatch(RandomFloor r) =>
        new(r.NewId(), r.OneOf("Harvest Ale", "Cellar Lager", "Mild"), "Pale", r.Any<BeerKind>())
        {
            OriginalGravity = Brewing.Extract.SpecificGravity.Of(r.Between(1.03, 1.08)),
            LimitOfAttenuation = r.Chance(0.7) ? Brewing.Extract.SpecificGravity.Of(1.01) : null,
            HarvestPlanned = r.Chance(0.3),
            Allergens = r.Chance(0.1) ? ["wheat"] : [],
        };

    public static bool IsEmpty(Tank tank, TankState state) => state.Contents.What is Holding.Nothing;

    private static TankTakenOver? TakenOver(RandomFloor r, Floor floor) =>
        RandomFloor.InTheYard(floor) is { } tank
            ? new TankTakenOver(tank.Id)
            {
                Soil = r.OneOf(Soil.Unknown, Soil.Soiled, Soil.Clean),
                Gas = r.Any<Gas>(),
                Closure = r.OneOf(Closure.Open, Closure.Vented, Closure.Closed),
            }
            : null;

    private static FillPlanned? Planned(RandomFloor r, Floor floor)
    {
        if (r.Tank(floor, (_, state) => state.Planned is null) is not { } tank)
        {
            return null;
        }

        var batch = NewBatch(r);
        var litres = Volume.FromLiters(tank.Thing.Working.Liters * 0.9);
        return new FillPlanned(tank.Thing.Id, batch.Id, r.Now.AddHours(r.Whole(2, 90)), litres) { NewBatch = batch };
    }

    private static Filled? Filled(RandomFloor r, Floor floor)
    {
        if (r.Tank(floor, IsEmpty) is not { } tank)
        {
            return null;
        }

        var planned = tank.State.Planned?.BatchId;
        var batch = planned is null ? NewBatch(r) : null;
        return new Filled(tank.Thing.Id, planned ?? batch!.Id, r.Litres(10, tank.Thing.Working.Liters))
        {
            NewBatch = batch,
            Temperature = Temperature.FromDegreesCelsius(r.Between(10, 24)),
            Gravity = r.Chance(0.8) ? RandomBeer.Read(r.Between(1.035, 1.08)) : null,
        };
    }

    private static ToppedUp? ToppedUp(RandomFloor r, Floor floor) =>
        r.Beer(floor, (state, _) => state.Contents.Volume is not null) is { } beer
            ? new ToppedUp(beer.Tank.Id, beer.Beer.Id, r.Litres(0.5, (beer.Tank.Total.Liters - Booked(beer.State)) / 4))
            : null;

    private static Racked? Racked(RandomFloor r, Floor floor)
    {
        if (r.Beer(floor, (state, _) => Booked(state) > 5) is not { } beer || r.Tank(floor, IsEmpty) is not { } to)
        {
            return null;
        }

        var litres = Math.Min(Booked(beer.State), to.Thing.Total.Liters) * 0.95;
        return new Racked(beer.Tank.Id, to.Thing.Id, beer.Beer.Id, r.Litres(litres * 0.9, litres), r.Litres(0, 1))
        {
            IsRest = litres > Booked(beer.State) * 0.9,
        };
    }

    private static Emptied? Emptied(RandomFloor r, Floor floor) =>
        r.Beer(floor, (_, _) => true) is { } beer
            ? new Emptied(beer.Tank.Id, beer.Beer.Id, r.Litres(0, Math.Min(1, Booked(beer.State))))
            : null;

    private static LevelMeasured? Measured(RandomFloor r, Floor floor) =>
        r.Tank(floor, (_, state) => state.HoldsBeer) is { } tank
            ? new LevelMeasured(tank.Thing.Id, r.Litres(0.9 * Booked(tank.State), 1.02 * Booked(tank.State) + 1))
            {
                BatchId = tank.State.BatchId,
            }
            : null;

    private static double Booked(TankState state) => state.Contents.Volume?.Liters ?? 20;
}
