using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Forecast;

/// <summary>How apparent extract falls: P(t) = Pe + (P0 - Pe) / (1 + exp(B (t - M))).</summary>
/// <param name="From">P0, where it comes from long before, °P; at pitching it stands a little lower.</param>
/// <param name="To">Pe, where it ends, °P.</param>
/// <param name="Steepness">B: 0.06 to 0.15 an hour for ales, 0.02 to 0.05 for lagers (common practice, no source).</param>
/// <param name="Midpoint">M, when it falls fastest: 20 to 45 h for ales, 60 to 110 h for lagers (the same).</param>
/// <remarks>
/// The form of ASBC Yeast-14; Speers, Rogers, Smith 2003, J. Inst. Brew. 109:229. Checks KI-01 to KI-03.
/// </remarks>
public readonly record struct FermentationCurve(
    DegreesPlato From,
    DegreesPlato To,
    Frequency Steepness,
    TimeSpan Midpoint
)
{
    /// <summary>Apparent extract at a time, °P.</summary>
    /// <param name="after">Since pitching.</param>
    public DegreesPlato At(TimeSpan after) =>
        new(To.Value + ((From.Value - To.Value) / (1 + Math.Exp(PerHour * (after.TotalHours - Midpoint.TotalHours)))));

    /// <summary>The fastest fall, °P an hour: B (P0 - Pe) / 4, at the midpoint.</summary>
    public DegreesPlato FastestPerHour => new(PerHour * (From.Value - To.Value) / 4);

    /// <summary>When so much of the fall is done: t = M + ln(x / (1 - x)) / B.</summary>
    /// <param name="share">0.1 to 99.9 %.</param>
    /// <returns>Since pitching; refused outside, and for a curve that doesn't fall.</returns>
    public Outcome<TimeSpan> TimeOf(Ratio share)
    {
        var x = share.DecimalFractions;
        var refusal =
            Accepted.Between(0.1, 99.9, share.Percent, "share", "%")
            ?? Accepted.Between(1e-4, 10, PerHour, "steepness", "1/h");
        return refusal is null ? TimeSpan.FromHours(Midpoint.TotalHours + (Math.Log(x / (1 - x)) / PerHour)) : refusal;
    }

    private double PerHour => Steepness.Hertz * 3600;
}
