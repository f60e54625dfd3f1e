using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>How a tank is built, as far as its drawing shows it: nothing here changes while it is filled.</summary>
/// <param name="Shape">Its measured inside: every outline, level and port follows from it.</param>
public sealed record TankFigure(VesselShape Shape)
{
    /// <summary>From the floor to the outlet, mm; 0 for what stands on the floor itself.</summary>
    public Length Legs { get; init; }

    /// <summary>What carries it.</summary>
    public DrawnStand Stand { get; init; }

    /// <summary>What closes it on top, as seen from outside.</summary>
    public DrawnTop Top { get; init; }

    /// <summary>Drawn with a thick soft wall instead of a thin even one.</summary>
    public bool IsPlastic { get; init; }

    /// <summary>How much narrower a bucket is at the floor than at the rim, mm on each side. For the silhouette only.</summary>
    public Length Taper { get; init; }

    /// <summary>Where a cooling jacket lies on the cylinder, from and to, mm above the cylinder's lower edge.</summary>
    public (Length From, Length To)? Jacket { get; init; }

    /// <summary>Ports, each where it is.</summary>
    public IReadOnlyList<DrawnPort> Ports { get; init; } = [];

    /// <summary>How gas leaves while the beer ferments.</summary>
    public DrawnVent Vent { get; init; }

    /// <summary>A manway in the lid.</summary>
    public bool HasManway { get; init; }

    /// <summary>A spray ball under the head.</summary>
    public bool HasSprayBall { get; init; }

    /// <summary>A tap near the floor of a bucket.</summary>
    public bool HasTap { get; init; }

    /// <summary>A relief valve on the head.</summary>
    public bool HasReliefValve { get; init; }

    /// <summary>The lower of the rating and the relief valve's setting, above air pressure; with it the tank gets a gauge.</summary>
    public Pressure? Allowed { get; init; }

    /// <summary>Up to where it is filled in use, L: a dashed line on the litre scale.</summary>
    public Volume? Working { get; init; }
}

/// <summary>What carries a tank.</summary>
public enum DrawnStand
{
    Legs,
    BracedLegs,
    Frame,
    None,
}

/// <summary>What closes a tank on top, as seen from outside.</summary>
public enum DrawnTop
{
    /// <summary>Dome or dish as in the shape, nothing on it.</summary>
    Head,

    /// <summary>A flat lid that overhangs the wall.</summary>
    Lid,

    /// <summary>A screw cap in the middle of a moulded shoulder.</summary>
    ScrewCap,

    /// <summary>A snap lid and a handle.</summary>
    Bucket,
}

/// <summary>How gas leaves.</summary>
public enum DrawnVent
{
    None,
    Airlock,
    Hose,
}

/// <summary>A port in the wall.</summary>
/// <param name="IsInCone">In the cone; otherwise in the cylinder.</param>
/// <param name="Height">In the cone: mm above the outlet. In the cylinder: mm above its lower edge.</param>
/// <param name="IsFitted">Something is mounted on it.</param>
/// <param name="IsOnLeft">At the left outline; otherwise at the right.</param>
public readonly record struct DrawnPort(bool IsInCone, Length Height, bool IsFitted, bool IsOnLeft = false);
