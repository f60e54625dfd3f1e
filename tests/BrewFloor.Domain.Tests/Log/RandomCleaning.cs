using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries that clean, sanitize and passivate.</summary>
internal static class RandomCleaning
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["rinsed"] = (r, floor) => At(r, floor, NoBeer, id => new Rinsed(id, r.Chance(0.3))),
        ["washed"] = (r, floor) =>
            At(
                r,
                floor,
                NoBeer,
                id => new Washed(id, r.OneOf(Agent.Alkaline, Agent.Caustic, Agent.Acid), r.Any<Way>())
                {
                    Temperature = Temperature.FromDegreesCelsius(r.Between(15, 80)),
                    Minutes = Duration.FromMinutes(r.Whole(5, 40)),
                    Used = RandomItems.Taken(r, floor),
                }
            ),
        ["inspected"] = (r, floor) =>
            At(r, floor, NoBeer, id => new Inspected(id, r.Any<InspectedHow>(), r.Chance(0.85))),
        ["sanitized"] = (r, floor) =>
            At(
                r,
                floor,
                (_, state) => state.Soil is Soil.Clean || (!state.HoldsBeer && r.Chance(0.3)),
                id => new Sanitized(id, r.OneOf(Agent.Peracetic, Agent.AcidAnionic, Agent.HotWater), r.Any<Way>())
                {
                    Minutes = Duration.FromMinutes(r.Whole(1, 30)),
                    Used = RandomItems.Taken(r, floor),
                }
            ),
        ["drained"] = (r, floor) =>
            At(
                r,
                floor,
                (_, state) => state.Contents.What is not (Holding.Nothing or Holding.Beer),
                id => new Drained(
                    id,
                    r.OneOf(Closure.Vented, Closure.Vented, Closure.Closed, Closure.Sealed, Closure.Open)
                )
            ),
        ["passivated"] = (r, floor) =>
            At(r, floor, Steel, id => new Passivated(id, r.Any<BathKind>()) { IsRinsed = r.Chance(0.7) }),
        ["air-dried"] = (r, floor) => At(r, floor, NoBeer, id => new AirDried(id)),
        ["triggered"] = (r, floor) => At(r, floor, Steel, id => new Triggered(id, r.Any<Trigger>())),
        ["exposed"] = (r, floor) =>
            At(
                r,
                floor,
                (_, _) => true,
                id => new Exposed(id, r.Any<ExposureKind>(), r.OneOf("Hazelnut", "Wild yeast"))
            ),
        ["cleared"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.ExposedTo is not []) is { } tank
                ? new Cleared(
                    tank.Thing.Id,
                    tank.State.ExposedTo is [var first, ..] ? first.Kind : ExposureKind.Allergen
                )
                : null,
    };

    private static bool NoBeer(Tank tank, TankState state) => !state.HoldsBeer;

    private static bool Steel(Tank tank, TankState state) => tank.IsStainless && !state.HoldsBeer;

    private static LogEntry? At(
        RandomFloor r,
        Floor floor,
        Func<Tank, TankState, bool> fits,
        Func<Guid, LogEntry> make
    ) => r.Tank(floor, fits) is { } tank ? make(tank.Thing.Id) : null;
}
