using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>What a tank is like now, as far as its drawing shows it.</summary>
public sealed record TankCondition
{
    /// <summary>What stands in it, L; 0 when it is empty.</summary>
    public Volume Volume { get; init; }

    /// <summary>There is something in it, but nobody knows how much: no liquid is drawn, a question mark is.</summary>
    public bool IsVolumeUnknown { get; init; }

    /// <summary>The colour of the beer, EBC, 2 to 100 and beyond.</summary>
    public double ColourEbc { get; init; } = 10;

    /// <summary>How far the beer in it is.</summary>
    public DrawnStage Stage { get; init; }

    /// <summary>How fast the gravity falls: the density of the bubbles.</summary>
    public DrawnVigour Vigour { get; init; } = DrawnVigour.Steady;

    /// <summary>How high the foam stands, in litres of the tank above the beer.</summary>
    public Volume Foam { get; init; }

    /// <summary>What lies at the bottom, the lowest first.</summary>
    public IReadOnlyList<DrawnSediment> Sediment { get; init; } = [];

    /// <summary>The state of an empty tank's inside.</summary>
    public DrawnSoil Soil { get; init; }

    /// <summary>Where the tide line of a soiled tank lies, L: its last level.</summary>
    public Volume TideLine { get; init; }

    /// <summary>What the gauge reads, above air pressure. No reading, no needle.</summary>
    public Pressure? Pressure { get; init; }

    /// <summary>Coolant runs through the jacket.</summary>
    public bool IsChilling { get; init; }

    /// <summary>Not to be used: dashed wall and a cross over everything.</summary>
    public bool IsOutOfService { get; init; }

    internal bool HasBeer => Volume > Volume.Zero && !IsVolumeUnknown;

    internal bool IsEmpty => !HasBeer && !IsVolumeUnknown;
}

/// <summary>How far the beer in a tank is, one texture each.</summary>
public enum DrawnStage
{
    Filled,
    Fermenting,
    Finished,
    Cold,
}

/// <summary>How fast the gravity falls.</summary>
public enum DrawnVigour
{
    Slow,
    Steady,
    Hard,
}

/// <summary>The inside of an empty tank, one texture each.</summary>
public enum DrawnSoil
{
    Clean,
    Soiled,
    Rinsed,
    Sanitized,
}

/// <summary>What lies in the cone.</summary>
public enum SedimentKind
{
    Trub,
    Yeast,
    Hops,
}

/// <summary>One layer at the bottom of the tank.</summary>
public readonly record struct DrawnSediment(SedimentKind Kind, Volume Volume);
