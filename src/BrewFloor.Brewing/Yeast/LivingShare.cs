using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>What a dead count allows to do with a yeast.</summary>
public enum DeadCellVerdict
{
    /// <summary>Less than 2 % dead.</summary>
    OnTarget,

    /// <summary>From 2 % to less than 5 % dead.</summary>
    Tolerable,

    /// <summary>5 % dead and more: not to be pitched.</summary>
    Excluded,
}

/// <summary>Which share of a yeast lives, from a stained count, with how sure that is.</summary>
/// <param name="Likely">In %.</param>
/// <param name="Low">In %: 19 times of 20 the truth lies above this and below <paramref name="High"/>.</param>
/// <param name="High">In %.</param>
/// <remarks>
/// Source: Wilson 1927, score interval, z = 1.96. Methylene blue flatters a dying yeast (O'Connor-Cox et al. 1997, MBAA TQ
/// 34:306): trust it above 90 % (from memory). Check YE-02.
/// </remarks>
public readonly record struct LivingShare(Ratio Likely, Ratio Low, Ratio High)
{
    private const double Z = 1.96;

    /// <summary>Below this the blue stain is not to be trusted (from memory).</summary>
    public static Ratio BlueIsTrustedFrom => Ratio.FromPercent(90);

    /// <summary>From this much dead on a pitching yeast is off its target: 2 % (MEBAK M-350; check YE-07).</summary>
    public static Ratio DeadTarget => Ratio.FromPercent(2);

    /// <summary>From this much dead on a yeast is not pitched: 5 % (MEBAK M-350; check YE-07).</summary>
    public static Ratio DeadExcluded => Ratio.FromPercent(5);

    /// <summary>By MEBAK's limits for pitching yeast.</summary>
    public DeadCellVerdict Verdict
    {
        get
        {
            var dead = 100 - Likely.Percent;
            return dead < DeadTarget.Percent ? DeadCellVerdict.OnTarget
                : dead < DeadExcluded.Percent ? DeadCellVerdict.Tolerable
                : DeadCellVerdict.Excluded;
        }
    }

    /// <summary>From a count.</summary>
    /// <param name="living">Unstained cells, 0 to all of them.</param>
    /// <param name="counted">All cells, 1 to 100,000.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<LivingShare> Of(int living, int counted)
    {
        var refusal =
            Accepted.Between(1, 100_000, counted, "counted") ?? Accepted.Between(0, counted, living, "living");
        if (refusal is not null)
        {
            return refusal;
        }

        double n = counted;
        var share = living / n;
        var middle = share + (Z * Z / (2 * n));
        var half = Z * Math.Sqrt((share * (1 - share) / n) + (Z * Z / (4 * n * n)));
        var whole = 1 + (Z * Z / n);
        return new LivingShare(
            Ratio.FromDecimalFractions(share),
            Ratio.FromDecimalFractions(Math.Max(0, (middle - half) / whole)),
            Ratio.FromDecimalFractions(Math.Min(1, (middle + half) / whole))
        );
    }
}
