using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>Cells for each millilitre and degree Plato.</summary>
/// <param name="PerMillilitreAndPlato">A million is usual for ale, one and a half for lager.</param>
public readonly record struct PitchRate(double PerMillilitreAndPlato)
{
    /// <summary>A million living cells, below 16 °P (common practice, no source).</summary>
    public static PitchRate Ale => new(1.0e6);

    /// <summary>One and a half million living cells, below 16 °P (common practice, no source).</summary>
    public static PitchRate Lager => new(1.5e6);

    /// <summary>2.3 million counted cells, found for worts of 12 to 16 °P (Suihko, Vilpola, Linko 1993; check YE-09).</summary>
    public static PitchRate Published => new(2.3e6);

    /// <summary>The same as wet yeast in the wort for each °P: 0.3 g/L (the same).</summary>
    public static MassConcentration PublishedWet => MassConcentration.FromGramsPerLiter(0.3);

    /// <summary>2.9 million counted cells, found for worts of 20 to 23 °P (the same; check YE-21).</summary>
    public static PitchRate PublishedStrong => new(2.9e6);
}

/// <summary>How much yeast a wort needs.</summary>
/// <remarks>
/// N = rate times °P times mL; slurry = N over density and living share. That the cells go with the extract is common
/// practice, not a law: published rates are twice the usual ones. Checks YE-03, YE-04, YE-09.
/// </remarks>
public static class Pitch
{
    /// <summary>Living cells for a wort.</summary>
    /// <param name="rate">0.05 to 10 million in a millilitre and °P.</param>
    /// <param name="wort">1 to 40 °P.</param>
    /// <param name="volume">0 to 10,000,000 L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CellCount> CellsFor(PitchRate rate, DegreesPlato wort, Volume volume) =>
        (
            Accepted.Between(5e4, 1e7, rate.PerMillilitreAndPlato, "pitch-rate", "/mL/°P")
            ?? Accepted.Between(1, 40, wort.Value, "original-extract", "°P")
            ?? Accepted.Litres(volume, "volume")
        )
            is { } refusal
            ? refusal
            : new CellCount(rate.PerMillilitreAndPlato * wort.Value * volume.Liters * 1000);

    /// <summary>The rate that a slurry gives: the inverse, to judge what was pitched.</summary>
    /// <param name="living">Cells pitched, 0 to 1e18.</param>
    /// <param name="wort">1 to 40 °P.</param>
    /// <param name="volume">0.01 to 10,000,000 L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<PitchRate> RateOf(CellCount living, DegreesPlato wort, Volume volume) =>
        (
            living.RefusalAs("cells")
            ?? Accepted.Between(1, 40, wort.Value, "original-extract", "°P")
            ?? Accepted.SomeLitres(volume, "volume")
        )
            is { } refusal
            ? refusal
            : new PitchRate(living.Count / wort.Value / (volume.Liters * 1000));

    /// <summary>Slurry that holds so many living cells, L.</summary>
    /// <param name="living">Cells needed, 0 to 1e18.</param>
    /// <param name="slurry">All cells in a millilitre.</param>
    /// <param name="share">Living share, 1 to 100 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> SlurryFor(CellCount living, CellDensity slurry, Ratio share) =>
        (
            living.RefusalAs("cells")
            ?? slurry.RefusalAs("cell-density")
            ?? Accepted.Between(1, 100, share.Percent, "viability", "%")
        )
            is { } refusal
            ? refusal
            : Volume.FromLiters(living.Count / slurry.PerMillilitre / share.DecimalFractions / 1000);

    /// <summary>Living cells in a slurry: the inverse of <see cref="SlurryFor"/>.</summary>
    /// <param name="volume">0 to 10,000,000 L.</param>
    /// <param name="slurry">All cells in a millilitre.</param>
    /// <param name="share">Living share, 0 to 100 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CellCount> LivingIn(Volume volume, CellDensity slurry, Ratio share) =>
        (
            Accepted.Litres(volume, "volume")
            ?? slurry.RefusalAs("cell-density")
            ?? Accepted.Between(0, 100, share.Percent, "viability", "%")
        )
            is { } refusal
            ? refusal
            : new CellCount(volume.Liters * 1000 * slurry.PerMillilitre * share.DecimalFractions);
}
