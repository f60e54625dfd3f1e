using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>What a spray ball must deliver so that the wall is washed by a film.</summary>
/// <remarks>
/// Static spray in an upright vessel, on the top head only: 25 L/min for each metre of circumference, which is 2.0 US
/// gal/min for each foot. Source: Franks, Seiberling in Clean-in-Place for Biopharmaceutical Processes. 25 to 35 is usual
/// (from memory). The film only tumbles when warm. Checks CI-01, CI-02.
/// </remarks>
public static class SprayFlow
{
    private const double FeetPerMetre = 1 / 0.3048;

    /// <summary>25 L/min for each metre of circumference.</summary>
    public static VolumeFlowPerCircumference Usual => new(25);

    /// <summary>The flow, L/min.</summary>
    /// <param name="diameter">Of the vessel, 1 to 20,000 mm.</param>
    /// <param name="wall">For each metre of circumference, 10 to 100 L/min.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<VolumeFlow> For(Length diameter, VolumeFlowPerCircumference wall) =>
        (
            Accepted.Between(1, 20_000, diameter.Millimeters, "diameter", "mm")
            ?? Accepted.Between(10, 100, wall.LitresPerMinuteAndMetre, "wall-flow", "L/min/m")
        )
            is { } refusal
            ? refusal
            : VolumeFlow.FromLitersPerMinute(wall.LitresPerMinuteAndMetre * Math.PI * diameter.Meters);

    /// <summary>A rule given in US gallons a minute and foot.</summary>
    /// <param name="gallonsPerMinute">A flow on one foot of circumference.</param>
    public static VolumeFlowPerCircumference OnEachFoot(VolumeFlow gallonsPerMinute) =>
        new(gallonsPerMinute.LitersPerMinute * FeetPerMetre);
}

/// <summary>A flow on each metre of a vessel's circumference.</summary>
/// <param name="LitresPerMinuteAndMetre">In L/min on one metre.</param>
public readonly record struct VolumeFlowPerCircumference(double LitresPerMinuteAndMetre);
