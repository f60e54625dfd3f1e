using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>When beer counts as cold: read at or below a cold set point, give or take what a jacket swings.</summary>
/// <remarks>Common practice, no source. In degrees, not in quantities: their sums are off in the last digit.</remarks>
internal static class Cold
{
    private const double HighestSetPoint = 6;

    private const double Swing = 1;

    /// <summary>A set point that asks for cold beer: at most 6 °C.</summary>
    public static bool IsAskedBy(Temperature setPoint) => setPoint.DegreesCelsius <= HighestSetPoint;

    /// <summary>At most 1 K above a cold set point.</summary>
    public static bool IsReachedAt(Temperature reading, Temperature setPoint) =>
        IsAskedBy(setPoint) && reading.DegreesCelsius <= setPoint.DegreesCelsius + Swing;
}
