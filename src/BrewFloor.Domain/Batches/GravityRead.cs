using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>What the instrument's scale says.</summary>
public enum GravityScale
{
    Sg2020, // density over that of water, both at 20 °C
    Sg6060, // both at 60 °F
    Plato,
}

public enum Instrument
{
    Hydrometer,
    DensityMeter,
}

/// <summary>A gravity as read: the figure on the scale, the instrument, and how warm the sample was.</summary>
/// <param name="Value">As read, in the unit of the scale.</param>
/// <param name="Scale">Of the instrument.</param>
/// <param name="Instrument">A density meter corrects for temperature itself; a hydrometer does not.</param>
/// <param name="Sample">In °C; null: at the scale's own temperature.</param>
public sealed record GravityRead(double Value, GravityScale Scale, Instrument Instrument, Temperature? Sample);
