using UnitsNet;

namespace BrewFloor.Brewing.Volumes;

/// <summary>A period's beer of one strength class: figures, not tax advice.</summary>
/// <param name="Opening">Stock at the start, L.</param>
/// <param name="Produced">In the period, L.</param>
/// <param name="Received">From elsewhere, or returned, L.</param>
/// <param name="Removed">Sold, used, sent or destroyed, L.</param>
/// <param name="Losses">Known ones, L.</param>
/// <param name="Counted">Stock at the end as measured, L.</param>
/// <remarks>
/// Opening + produced + received - removed - losses = closing; what was measured more or less is an overage or a shortage.
/// The US report (TTB F 5130.9) has the same bones: opening is the previous closing, barrels to two decimals, due on the
/// 15th. Check TT-01.
/// </remarks>
public sealed record MonthlySummary(
    Volume Opening,
    Volume Produced,
    Volume Received,
    Volume Removed,
    Volume Losses,
    Volume Counted
)
{
    /// <summary>The US report is due on this day after the period.</summary>
    public const int UsDueDay = 15;

    /// <summary>The US report gives barrels to so many decimals.</summary>
    public const int UsDecimals = 2;

    /// <summary>Up to this yearly liability, in US dollars, the US report may be quarterly.</summary>
    public const int UsQuarterlyUpTo = 50_000;

    /// <summary>What should be there, L.</summary>
    public Volume Expected =>
        Volume.FromLiters(Opening.Liters + Produced.Liters + Received.Liters - Removed.Liters - Losses.Liters);

    /// <summary>Measured less what should be there, L: above zero an overage, below a shortage.</summary>
    public Volume Difference => Volume.FromLiters(Counted.Liters - Expected.Liters);

    /// <summary>The next period, which opens with what this one counted.</summary>
    public MonthlySummary Next() => new(Counted, Volume.Zero, Volume.Zero, Volume.Zero, Volume.Zero, Counted);

    /// <summary>Whether it opens with what the one before closed.</summary>
    /// <param name="previous">The period before.</param>
    public bool Continues(MonthlySummary previous) => Math.Abs(Opening.Liters - previous.Counted.Liters) < 0.0005;

    /// <summary>In US beer barrels, as the report rounds them.</summary>
    /// <param name="volume">Any of the figures.</param>
    public static decimal UsBarrels(Volume volume) =>
        Math.Round((decimal)volume.UsBeerBarrels, UsDecimals, MidpointRounding.AwayFromZero);
}
