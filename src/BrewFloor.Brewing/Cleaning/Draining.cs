using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>A vessel that runs empty through a hole, as wide above as below.</summary>
/// <param name="Surface">Its cross-section, 0.0001 to 400 m².</param>
/// <param name="Hole">Cross-section of the outlet, smaller than the surface.</param>
/// <param name="Discharge">Discharge coefficient, 0.3 to 1: what the hole lets through of what theory does.</param>
/// <remarks>
/// t = A / (Cd a) √(2 h / g), Torricelli. A cone empties faster than its widest section. The drain must let out more than
/// the pump sends in, or the wall below the flood isn't washed.
/// </remarks>
public readonly record struct Draining(Area Surface, Area Hole, Ratio Discharge)
{
    private const double Gravity = 9.80665;

    /// <summary>Time to run empty.</summary>
    /// <param name="level">Above the outlet, 0 to 20,000 mm.</param>
    /// <returns>In s; refused outside.</returns>
    public Outcome<Duration> TimeFrom(Length level) =>
        RefusalOf(level) is { } refusal
            ? refusal
            : Duration.FromSeconds(
                Surface.SquareMeters
                    / (Discharge.DecimalFractions * Hole.SquareMeters)
                    * Math.Sqrt(2 * level.Meters / Gravity)
            );

    /// <summary>What runs out at a level, L/min: more must not run in.</summary>
    /// <param name="level">Above the outlet, 0 to 20,000 mm.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<VolumeFlow> FlowAt(Length level) =>
        RefusalOf(level) is { } refusal
            ? refusal
            : VolumeFlow.FromLitersPerMinute(
                Discharge.DecimalFractions * Hole.SquareMeters * Math.Sqrt(2 * Gravity * level.Meters) * 60_000
            );

    private Refusal? RefusalOf(Length level) =>
        Accepted.Between(0.0001, 400, Surface.SquareMeters, "surface", "m²")
        ?? Accepted.Between(1e-6, Surface.SquareMeters, Hole.SquareMeters, "outlet", "m²")
        ?? Accepted.Between(0.3, 1, Discharge.DecimalFractions, "discharge")
        ?? Accepted.Between(0, 20_000, level.Millimeters, "level", "mm");
}
