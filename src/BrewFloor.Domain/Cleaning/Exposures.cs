using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>What a tank met that stays in soft parts, and when it is clear of it.</summary>
public static class Exposures
{
    // By kind and words; with more sorts than this the oldest makes room.
    private const int MostKept = 16;

    /// <summary>Soft parts renewed, washed twice and seen clean since. Scratched plastic never clears.</summary>
    public static bool IsClearOf(this Tank tank, Exposure exposure) =>
        exposure.IsCleared && tank.Material is not Material.Plastic;

    /// <summary>Met again: what was done against it before doesn't count.</summary>
    public static TankState ExposedAnew(this TankState tank, Exposure exposure)
    {
        var others = tank.ExposedTo.Without(e =>
            e.Kind == exposure.Kind && string.Equals(e.What, exposure.What, StringComparison.OrdinalIgnoreCase)
        );
        return tank with { ExposedTo = [.. others.TakeLast(MostKept - 1), exposure] };
    }

    /// <summary>A wash that began after the exposure was rinsed out; two are enough, more aren't counted.</summary>
    public static Exposure WashedOut(this Exposure exposure, Moment wash) =>
        wash.At > exposure.Moment.At ? exposure with { Washes = Math.Min(2, exposure.Washes + 1) } : exposure;
}
