using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Tanks;

/// <summary>A round tank standing upright, by its measured inside sizes.</summary>
/// <remarks>
/// Exact for the shape (closed forms, checks GE-01 to GE-10 in <c>docs/science/tanks.md</c>); a real tank differs by what
/// hangs in it, 0.2 to 3 % (common practice, no source), and by its sheet. Where litres count, weigh water in and use a
/// <see cref="DipTable"/>.
/// </remarks>
public sealed record VesselShape : IStrapping
{
    // A cone needs a wall: an outlet as wide as the cylinder leaves none.
    private const double LeastShoulder = 0.01; // mm

    private const double CubicMillimetresPerLitre = 1e6;

    private const double SquareMillimetresPerSquareMetre = 1e6;

    private readonly Stack _stack;

    private VesselShape(Length diameter, Length cylinder, VesselBottom bottom, Length outlet, VesselHead head)
    {
        (Diameter, CylinderHeight, Outlet) = (Stored(diameter), Stored(cylinder), Stored(outlet));
        (Bottom, Head) = (bottom.InStoredUnits(), head.InStoredUnits());
        _stack = new Stack(
            bottom.SectionIn(diameter.Millimeters, outlet.Millimeters),
            new CylinderSection(diameter.Millimeters / 2, cylinder.Millimeters),
            head.SectionIn(diameter.Millimeters)
        );
    }

    /// <summary>Inside diameter of the cylinder, mm.</summary>
    public Length Diameter { get; }

    /// <summary>Height of the cylinder alone, mm.</summary>
    public Length CylinderHeight { get; }

    /// <summary>Inside diameter of the outlet, mm; 0 where there is none.</summary>
    public Length Outlet { get; }

    /// <summary>The bottom as measured.</summary>
    public VesselBottom Bottom { get; }

    /// <summary>The head as measured.</summary>
    public VesselHead Head { get; }

    /// <summary>Height of cone or dish, mm from the outlet plane; 0 for a flat floor.</summary>
    public Length BottomHeight => Length.FromMillimeters(_stack.Bottom.Height);

    /// <summary>Height of dish or dome above the cylinder, mm; 0 for a lid.</summary>
    public Length HeadHeight => Length.FromMillimeters(_stack.Head.Height);

    /// <inheritdoc/>
    public Length Height => Length.FromMillimeters(_stack.Height);

    /// <summary>What the cone or the dish holds, L; 0 for a flat floor.</summary>
    public Volume BottomVolume => Litres(_stack.Bottom.Volume);

    /// <summary>What the cylinder alone holds, L.</summary>
    public Volume CylinderVolume => Litres(_stack.Cylinder.Volume);

    /// <summary>What the dish or the dome holds, L; 0 for a lid.</summary>
    public Volume HeadVolume => Litres(_stack.Head.Volume);

    /// <summary>Everything up to the inside of the head, L: beer and headspace together.</summary>
    public Volume Total => Litres(_stack.Volume);

    /// <summary>All of the inside, floor and lid included, m²: what a cleaner has to reach.</summary>
    public Area InsideArea => SquareMetres(_stack.Area);

    /// <summary>A shape from inside measures.</summary>
    /// <param name="diameter">Of the cylinder, 1 to 20,000 mm.</param>
    /// <param name="cylinderHeight">Of the cylinder alone, 1 to 20,000 mm.</param>
    /// <param name="bottom">Cone, dish or flat floor.</param>
    /// <param name="outlet">Inside diameter of the outlet, from 0 (none) to less than the cylinder's.</param>
    /// <param name="head">Lid, dish or dome.</param>
    /// <returns>
    /// The first measure that cannot be, by name (<c>diameter</c>, <c>cylinder-height</c>, <c>outlet</c>,
    /// <c>cone-angle</c>, <c>cone-height</c>, <c>dome-height</c>, <c>height</c> of all together), is refused with what
    /// could: <c>out-of-range</c>, <c>missing</c> (a cone without angle and height), <c>cone-contradicts</c> (angle and
    /// height of two cones).
    /// </returns>
    public static Outcome<VesselShape> Measured(
        Length diameter,
        Length cylinderHeight,
        VesselBottom bottom,
        Length outlet,
        VesselHead head
    )
    {
        var (d, hole) = (diameter.Millimeters, outlet.Millimeters);
        var refusal =
            Accepted.Between(Limits.ShortestMm, Limits.LongestMm, d, "diameter", "mm")
            ?? Accepted.Between(
                Limits.ShortestMm,
                Limits.LongestMm,
                cylinderHeight.Millimeters,
                "cylinder-height",
                "mm"
            )
            ?? Accepted.Between(0, d - LeastShoulder, hole, "outlet", "mm")
            ?? bottom.RefusalIn(d, hole)
            ?? head.RefusalIn(d);
        if (refusal is not null)
        {
            return refusal;
        }

        var shape = new VesselShape(diameter, cylinderHeight, bottom, outlet, head);
        return Accepted.Between(Limits.ShortestMm, Limits.LongestMm, shape._stack.Height, "height", "mm") is { } tooHigh
            ? tooHigh
            : shape;
    }

    /// <inheritdoc/>
    public Outcome<Volume> VolumeAt(Length level) =>
        LevelRefusal(level) is { } refusal ? refusal : Litres(_stack.VolumeTo(level.Millimeters));

    /// <inheritdoc/>
    public Outcome<Length> LevelOf(Volume volume) =>
        Accepted.Between(0, Total.Liters, volume.Liters, "volume", "L") is { } refusal
            ? refusal
            : Length.FromMillimeters(
                Math.Clamp(_stack.LevelOf(volume.Liters * CubicMillimetresPerLitre), 0, _stack.Height)
            );

    /// <summary>The wall that liquid up to a level touches, a flat floor included, m²; a lid is never wetted.</summary>
    /// <param name="level">In mm above the outlet plane, 0 to <see cref="Height"/>.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Area> WettedArea(Length level) =>
        LevelRefusal(level) is { } refusal ? refusal : SquareMetres(_stack.AreaTo(level.Millimeters));

    /// <summary>How wide it is inside at a level, mm: the outline for a drawing.</summary>
    /// <param name="level">In mm above the outlet plane, 0 to <see cref="Height"/>.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Length> DiameterAt(Length level) =>
        LevelRefusal(level) is { } refusal ? refusal : Length.FromMillimeters(2 * _stack.RadiusAt(level.Millimeters));

    private static Length Stored(Length length) => length.ToUnit(LengthUnit.Millimeter);

    private static Volume Litres(double cubicMillimetres) =>
        Volume.FromLiters(cubicMillimetres / CubicMillimetresPerLitre);

    private static Area SquareMetres(double squareMillimetres) =>
        Area.FromSquareMeters(squareMillimetres / SquareMillimetresPerSquareMetre);

    private Refusal? LevelRefusal(Length level) => Accepted.Between(0, _stack.Height, level.Millimeters, "level", "mm");
}
