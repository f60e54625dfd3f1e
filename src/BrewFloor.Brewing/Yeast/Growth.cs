using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>How much yeast may be there when a beer is done.</summary>
/// <param name="DryYeast">New dry yeast by the balance, kg: what the extract can have become at most.</param>
/// <param name="Low">Cells after two doublings.</param>
/// <param name="High">Cells after three doublings.</param>
/// <param name="CropLow">Three times the pitch: the least that is usually cropped (from memory).</param>
/// <param name="CropHigh">Five times the pitch: the most that is usually cropped (from memory).</param>
/// <remarks>
/// Balling: 0.0532 kg dry yeast from a kilogram of extract. That cells double two to three times is from an open lecture
/// note: bounds, no forecast.
/// </remarks>
public readonly record struct Growth(
    Mass DryYeast,
    CellCount Low,
    CellCount High,
    CellCount CropLow,
    CellCount CropHigh
)
{
    /// <summary>The bounds for a batch.</summary>
    /// <param name="pitched">Living cells pitched, 0 to 1e18.</param>
    /// <param name="fermented">What the wort became.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Growth> Of(CellCount pitched, Fermented fermented) =>
        pitched.RefusalAs("cells") is { } refusal
            ? refusal
            : new Growth(
                fermented.Formed.DryYeast,
                new(pitched.Count * 4),
                new(pitched.Count * 8),
                new(pitched.Count * 3),
                new(pitched.Count * 5)
            );
}
