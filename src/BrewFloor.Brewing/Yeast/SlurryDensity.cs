using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>How thick a slurry is, and how well that is known.</summary>
/// <param name="Likely">Cells in a millilitre.</param>
/// <param name="Low">At the thin end.</param>
/// <param name="High">At the thick end.</param>
/// <param name="IsMeasured">Whether anybody counted or spun it; otherwise say so, and ask for a count.</param>
public readonly record struct SlurryDensity(CellDensity Likely, CellDensity Low, CellDensity High, bool IsMeasured)
{
    /// <summary>A settled slurry nobody measured: 1.2 billion, 0.5 to 3 (common practice, no source).</summary>
    public static SlurryDensity Unmeasured => new(new(1.2e9), new(0.5e9), new(3e9), false);

    /// <summary>From a count, within its standard error.</summary>
    /// <param name="count">As counted.</param>
    public static SlurryDensity Counted(YeastCount count)
    {
        var (likely, error) = (count.Density.PerMillilitre, count.PlusMinus.DecimalFractions);
        return new(count.Density, new(likely * Math.Max(0, 1 - error)), new(likely * (1 + error)), true);
    }

    /// <summary>From the solids that a centrifuge leaves, times what the strain packs to.</summary>
    /// <param name="solids">By volume, 1 to 100 %.</param>
    /// <param name="packed">Of this strain's packed cells, counted once: 2.5 to 5 billion in a millilitre.</param>
    /// <returns>The ends of the range are those of any strain; refused outside.</returns>
    /// <remarks>
    /// Arithmetic. Cells of 6 to 8 µm packed at 0.64 are 2.4 to 5.7 billion in a millilitre: a ceiling (computed).
    /// </remarks>
    public static Outcome<SlurryDensity> Spun(Ratio solids, CellDensity packed)
    {
        var refusal =
            Accepted.Between(1, 100, solids.Percent, "solids", "%")
            ?? Accepted.Between(2.5e9, 5e9, packed.PerMillilitre, "packed", "/mL");
        var share = solids.DecimalFractions;
        return refusal is null
            ? new SlurryDensity(new(share * packed.PerMillilitre), new(share * 2.5e9), new(share * 5e9), true)
            : refusal;
    }
}
