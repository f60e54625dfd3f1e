using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Forecast;

/// <summary>A batch of the same strain that is done.</summary>
/// <param name="Attenuation">Apparent degree of fermentation it ended at, 30 to 110 %.</param>
/// <param name="Steepness">As fitted (<see cref="CurveFit"/>), 0.005 to 0.5 an hour.</param>
/// <param name="Midpoint">As fitted, 2 to 500 h.</param>
public readonly record struct EarlierBatch(Ratio Attenuation, Frequency Steepness, TimeSpan Midpoint)
{
    private const int Fewest = 5;

    /// <summary>From what was read of it, with the wort it began as.</summary>
    /// <param name="original">2 to 35 °P.</param>
    /// <param name="readings">In the order of time, five at least, one in the upper half of the fall; the last is where it ended.</param>
    /// <returns>Refused outside, and as <see cref="CurveFit.Through"/> refuses.</returns>
    /// <remarks>Without a reading in the upper half nobody knows when it fell: steepness and midpoint would be noise.</remarks>
    public static Outcome<EarlierBatch> Of(DegreesPlato original, IReadOnlyList<GravityReading> readings)
    {
        if (Accepted.Between(2, 35, original.Value, "original-extract", "°P") is { } refusal)
        {
            return refusal;
        }

        if (readings.Count < Fewest)
        {
            return new Refusal("too-few-points", "readings", $"{Fewest}", "");
        }

        var end = readings[^1].Extract.Value;
        return readings.Max(read => read.Extract.Value) < (original.Value + end) / 2
            ? new Refusal("no-curve", "readings", "", "")
            : from fit in CurveFit.Through([new(TimeSpan.Zero, original), .. readings])
            let ended = Ratio.FromDecimalFractions(1 - (end / original.Value))
            from batch in Plausible(new(ended, fit.Curve.Steepness, fit.Curve.Midpoint))
            select batch;
    }

    /// <summary>What is outside the ranges above; null: nothing.</summary>
    internal Refusal? Refusal =>
        Accepted.Between(30, 110, Attenuation.Percent, "attenuation", "%")
        ?? Accepted.Between(0.005, 0.5, Steepness.Hertz * 3600, "steepness", "1/h")
        ?? Accepted.Between(2, 500, Midpoint.TotalHours, "midpoint", "h");

    private static Outcome<EarlierBatch> Plausible(EarlierBatch batch) =>
        batch.Refusal is { } refusal ? refusal : batch;
}
