using UnitsNet;

namespace BrewFloor.Brewing.Volumes;

/// <summary>How many kegs a volume fills.</summary>
/// <param name="Full">Full ones.</param>
/// <param name="Rest">Left for one more, L.</param>
/// <param name="Lost">On the way, L.</param>
/// <remarks>Arithmetic. Packaging loses 1 to 4 % (common practice, no source).</remarks>
public readonly record struct Kegs(int Full, Volume Rest, Volume Lost)
{
    /// <summary>Of one size.</summary>
    /// <param name="beer">0 to 10,000,000 L.</param>
    /// <param name="keg">0.1 to 10,000 L.</param>
    /// <param name="loss">On the way, 0 to 50 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Kegs> Filled(Volume beer, Volume keg, Ratio loss)
    {
        var refusal =
            Accepted.Litres(beer, "beer")
            ?? Accepted.Between(0.1, 10_000, keg.Liters, "keg", "L")
            ?? Accepted.Between(0, 50, loss.Percent, "loss", "%");
        if (refusal is not null)
        {
            return refusal;
        }

        var lost = beer.Liters * loss.DecimalFractions;
        var full = (int)Math.Floor(((beer.Liters - lost) / keg.Liters) + 1e-9);
        return new Kegs(
            full,
            Volume.FromLiters(Math.Max(0, beer.Liters - lost - (full * keg.Liters))),
            Volume.FromLiters(lost)
        );
    }
}
