using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>How much solution a tank's cleaning in place takes.</summary>
/// <param name="Pool">What lies in the tank, L.</param>
/// <param name="Total">With pump and hoses, L.</param>
/// <remarks>
/// What pump and lines hold, and a pool of 1 to 5 % of the tank that at least covers its outlet (common practice, no
/// source).
/// </remarks>
public readonly record struct CipCharge(Volume Pool, Volume Total)
{
    /// <summary>For a tank.</summary>
    /// <param name="tank">By its shape or its marks.</param>
    /// <param name="lines">Held by pump and hoses, 0 to 10,000 L.</param>
    /// <param name="share">Of the tank, 1 to 5 %.</param>
    /// <param name="cover">Level that keeps the outlet covered while it drains, in the tank's range.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CipCharge> For(IStrapping tank, Volume lines, Ratio share, Length cover)
    {
        var covering = tank.VolumeAt(cover);
        var refusal =
            Accepted.Between(0, 10_000, lines.Liters, "lines", "L")
            ?? Accepted.Between(1, 5, share.Percent, "pool", "%")
            ?? covering.Refusal;
        if (refusal is not null)
        {
            return refusal;
        }

        var pool = Volume.FromLiters(Math.Max(tank.Total.Liters * share.DecimalFractions, covering.Value.Liters));
        return new CipCharge(pool, Volume.FromLiters(pool.Liters + lines.Liters));
    }
}
