using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>Soil dries on: a tank is washed when it is emptied, or found soiled. Water alone doesn't do it (common practice, no source).</summary>
public static class WashSoiledTank
{
    public const string Rule = "wash-soiled-tank";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now)
    {
        if (SoiledSince(state) is { } soiled)
        {
            yield return new(
                Rule,
                state.Subject,
                soiled.Entry,
                soiled.At,
                soiled.At + rules.WashOverdue,
                [new("soiled", soiled.At)]
            );
        }
    }

    private static Moment? SoiledSince(TankState state) =>
        state switch
        {
            { Washed: not null } => null,
            { Soil: Soil.Soiled } => state.SoilSince,
            { Soil: Soil.Rinsed } => state.SoiledBeforeRinse,
            _ => null,
        };
}
