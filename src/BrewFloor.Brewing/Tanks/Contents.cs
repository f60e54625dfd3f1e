using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>What lies below, in and above the beer of a tank.</summary>
/// <param name="Sediment">Yeast, trub and hops below their level, L.</param>
/// <param name="SedimentPlusMinus">One tenth of it: the surface of a sediment isn't flat.</param>
/// <param name="Beer">Between sediment and surface, L.</param>
/// <param name="Ullage">Above the surface, L: what gas fills.</param>
/// <remarks>The tank's own strapping; the tenth is common practice, no source.</remarks>
public readonly record struct Contents(Volume Sediment, Volume SedimentPlusMinus, Volume Beer, Volume Ullage)
{
    /// <summary>Of a tank.</summary>
    /// <param name="tank">By its shape or its marks.</param>
    /// <param name="sediment">Level of the sediment, in the tank's range.</param>
    /// <param name="surface">Level of the beer, not below the sediment's.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Contents> Of(IStrapping tank, Length sediment, Length surface)
    {
        var (below, all) = (tank.VolumeAt(sediment), tank.VolumeAt(surface));
        var refusal =
            (below.Refusal is { } tooHigh ? tooHigh with { What = "sediment-level" } : null)
            ?? all.Refusal
            ?? Accepted.Between(
                sediment.Millimeters,
                tank.Height.Millimeters,
                surface.Millimeters,
                "surface-level",
                "mm"
            );
        return refusal is null
            ? new Contents(
                below.Value,
                below.Value * 0.1,
                Volume.FromLiters(all.Value.Liters - below.Value.Liters),
                Volume.FromLiters(tank.Total.Liters - all.Value.Liters)
            )
            : refusal;
    }
}
