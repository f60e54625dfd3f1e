using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>What a clamp fitting shows to the one it meets.</summary>
/// <param name="Flange">Outside diameter of the rim that the clamp grips, mm.</param>
/// <param name="Bore">Inside diameter at the face, mm.</param>
public readonly record struct Mouth(Length Flange, Length Bore);

/// <summary>Two fittings face to face. Which of the two is named first makes no difference.</summary>
public readonly record struct Joint(Mouth One, Mouth Other)
{
    // Ours: the next size of flange is more than 9 mm away, and a lip that can be felt holds soil.
    private const double SameMm = 0.5;

    /// <summary>One clamp grips both flanges.</summary>
    public bool Holds => Math.Abs(One.Flange.Millimeters - Other.Flange.Millimeters) < SameMm;

    /// <summary>How much one bore is wider than the other, mm.</summary>
    public Length Step => Length.FromMillimeters(Math.Abs(One.Bore.Millimeters - Other.Bore.Millimeters));

    /// <summary>A lip stands in the way of what flows.</summary>
    public bool HasStep => Step.Millimeters >= SameMm;
}

/// <summary>A short piece between two sizes; its bore widens inside it, so that within it there is no step.</summary>
/// <param name="Port">The end that meets the port.</param>
/// <param name="Part">The end that meets the part.</param>
public readonly record struct Reducer(Mouth Port, Mouth Part);

/// <summary>What fits what: the joints from the port to the part, one or, through a reducer, two.</summary>
/// <remarks>
/// The flange decides whether a clamp holds, the bore whether a lip is left: 1 in and 1 1/2 in share a clamp, and so do DN 40 and
/// 1 1/2 in, each with a step. Flanges are from memory unless measured. Says nothing of gaskets, ratings or threads.
/// </remarks>
public sealed record ClampFit(IReadOnlyList<Joint> Joints)
{
    /// <param name="port">The ferrule on the tank.</param>
    /// <param name="part">The ferrule of what is mounted on it.</param>
    /// <param name="through">The reducer between them; null: none.</param>
    public static ClampFit Of(Mouth port, Mouth part, Reducer? through = null) =>
        new(through is { } reducer ? [new(port, reducer.Port), new(reducer.Part, part)] : [new(port, part)]);

    /// <summary>Every joint takes a clamp.</summary>
    public bool Holds => Joints.All(joint => joint.Holds);

    /// <summary>The first joint that no clamp holds; null: none.</summary>
    public Joint? Apart => Joints.Where(joint => !joint.Holds).Select(joint => (Joint?)joint).FirstOrDefault();

    /// <summary>The joint with the widest step, of those that hold; null: flush all through.</summary>
    public Joint? Step =>
        Joints
            .Where(joint => joint is { Holds: true, HasStep: true })
            .OrderByDescending(joint => joint.Step.Millimeters)
            .Select(joint => (Joint?)joint)
            .FirstOrDefault();
}
