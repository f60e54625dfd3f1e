using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Where a port is let into the wall.</summary>
public enum PortPlace
{
    Lid,
    Side,
    Cone,
    Bottom,
}

/// <summary>An opening in a tank's wall for something to be mounted on: part of what the tank is.</summary>
/// <param name="Number">1 to 24, its own on this tank; entries name it by this, and it stands in the drawing.</param>
/// <param name="Name">As it is called on the floor: "racking port".</param>
/// <param name="Place">Where.</param>
/// <remarks>What is mounted on it at the moment is not said here: that happens, and is in the log.</remarks>
public sealed record Port(int Number, string Name, PortPlace Place)
{
    /// <summary>More than any tank has; a drawing with more could not be read.</summary>
    public const int Most = 24;

    public const int LongestName = 40;

    /// <summary>The size of its ferrule; null: no clamp, or nobody looked.</summary>
    public Clamp? Clamp { get; init; }

    /// <summary>The ferrule's flange as measured, mm; it comes before the list's, which is from memory.</summary>
    public Length? Flange { get; init; }

    /// <summary>The ferrule's bore as measured, mm.</summary>
    public Length? Bore { get; init; }

    /// <summary>Of its middle above the outlet, mm; on side and cone.</summary>
    public Length? Height { get; init; }

    /// <summary>Of its middle from the tank's axis, mm; on lid and bottom.</summary>
    public Length? FromMiddle { get; init; }

    /// <summary>Degrees around the tank, 0 in front, 90 on the right, 180 behind, 270 on the left; 0 to 360.</summary>
    public Angle? Around { get; init; }

    /// <summary>What a part meets here; null: nobody knows the size.</summary>
    public Mouth? Mouth
    {
        get
        {
            var listed = Clamp is { } clamp ? Ferrule.Of(clamp).Mouth : (Mouth?)null;
            return (Flange ?? listed?.Flange) is { } flange && (Bore ?? listed?.Bore) is { } bore
                ? new(flange, bore)
                : null;
        }
    }

    /// <summary>As it is ordered, "1 1/2 in"; empty when it is none of the list.</summary>
    public string Size => Clamp is { } clamp ? Ferrule.Of(clamp).Name : "";
}

/// <summary>What is mounted on ports.</summary>
public enum Part
{
    BlankCap,
    Valve,
    SampleValve,
    RackingArm,
    SightGlass,
    Thermowell,
    SprayBall,
    GasPost,
    BlowOff,
    ReliefValve,
    VacuumRelief,
    Gauge,
    DecarbonationCoil,
    CarbonationStone,
    HopPort,
    Other,
}

/// <summary>A reducer between a port and a part of another size.</summary>
/// <param name="Port">The end that meets the port.</param>
/// <param name="Part">The end that meets the part.</param>
public readonly record struct Adapter(Clamp Port, Clamp Part)
{
    public Reducer Reducer => new(Ferrule.Of(Port).Mouth, Ferrule.Of(Part).Mouth);
}

/// <summary>A part on a port.</summary>
/// <param name="Port">The port's number on its tank.</param>
/// <param name="Part">What is mounted there.</param>
public sealed record Fitting(int Port, Part Part)
{
    /// <summary>The size of the part's own ferrule; null: nobody looked.</summary>
    public Clamp? Clamp { get; init; }

    /// <summary>The reducer it sits on; null: none.</summary>
    public Adapter? Through { get; init; }

    /// <summary>What the part shows to the port or the reducer; null: nobody looked.</summary>
    public Mouth? Mouth => Clamp is { } clamp ? Ferrule.Of(clamp).Mouth : null;
}
