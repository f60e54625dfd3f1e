using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>How much a tank holds at which level: from its measured shape, or from a table of marks.</summary>
/// <remarks>Two ways to know it: <see cref="VesselShape"/> and <see cref="DipTable"/>.</remarks>
public interface IStrapping
{
    /// <summary>What it holds at the highest level known, in litres.</summary>
    Volume Total { get; }

    /// <summary>The highest level known, in millimetres.</summary>
    Length Height { get; }

    /// <summary>What stands in the tank, in litres.</summary>
    /// <param name="level">In mm above the outlet plane.</param>
    /// <returns>Refused below the lowest and above the highest level known.</returns>
    Outcome<Volume> VolumeAt(Length level);

    /// <summary>Where the surface stands, in mm above the outlet plane; the inverse of <see cref="VolumeAt"/>.</summary>
    /// <param name="volume">In litres.</param>
    /// <returns>Refused below the least and above the most that is known.</returns>
    Outcome<Length> LevelOf(Volume volume);
}
