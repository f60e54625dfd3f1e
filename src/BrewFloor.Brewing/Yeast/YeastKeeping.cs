using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>What a lager yeast lost in six days of cold store, as published.</summary>
/// <param name="Kept">In °C.</param>
/// <param name="ViabilityLost">In %.</param>
/// <param name="GlycogenLost">In %.</param>
public readonly record struct StorageLoss(Temperature Kept, Ratio ViabilityLost, Ratio GlycogenLost);

/// <summary>What is published on keeping, washing and using yeast again: limits to warn by.</summary>
public static class YeastKeeping
{
    /// <summary>Above this wort the usual number of generations is lower.</summary>
    private const double StrongWort = 16;

    /// <summary>McCaig, Bendiak 1985, MBAA Tech. Q., abstract. That 25 °C is the warmest is our reading. Checks YE-06, YE-20.</summary>
    public static IReadOnlyList<StorageLoss> SixDays { get; } =
    [
        new(Temperature.FromDegreesCelsius(1), Ratio.FromPercent(7), Ratio.FromPercent(5)),
        new(Temperature.FromDegreesCelsius(5), Ratio.FromPercent(14), Ratio.FromPercent(22)),
        new(Temperature.FromDegreesCelsius(25), Ratio.FromPercent(68), Ratio.FromPercent(79)),
    ];

    /// <summary>Kept no longer than this without a count, 4 days (a current textbook chapter; check YE-24).</summary>
    public static TimeSpan LongestUncounted => TimeSpan.FromDays(4);

    /// <summary>Kept no warmer than this without a count, 5 °C (ours, from the losses above).</summary>
    public static Temperature WarmestUncounted => Temperature.FromDegreesCelsius(5);

    /// <summary>pH of an acid wash with phosphoric acid: 2.1 (Simpson, Hammond 1989; check YE-08).</summary>
    public const double AcidWashPh = 2.1;

    /// <summary>pH with sulphuric acid: 2.0 (the same; no check).</summary>
    public const double AcidWashSulphuricPh = 2.0;

    /// <summary>Yeast is never warmer than this in an acid wash, 5 °C (the same).</summary>
    public static Temperature AcidWashWarmest => Temperature.FromDegreesCelsius(5);

    /// <summary>Generations that a yeast was good for, by its wort; of 12 °P more than that (Stewart 2015; check YE-22).</summary>
    public static IReadOnlyList<(DegreesPlato Wort, int Generations)> GenerationsByWort { get; } =
    [(new(12), 20), (new(14), 16), (new(16), 12), (new(18), 8)];

    /// <summary>One brewer's own limits for four strains: 5 to 10 (Jenkins et al. 2003; check YE-23).</summary>
    public static IReadOnlyList<int> GenerationsByStrain { get; } = [10, 10, 8, 5];

    /// <summary>Generations to allow where the brewery has set none: 8, and 5 above 16 °P (ours, inside those two).</summary>
    /// <param name="wort">Of the strongest wort it has been in, 0 to 40 °P.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<int> GenerationLimit(DegreesPlato wort) =>
        Accepted.Between(0, 40, wort.Value, "original-extract", "°P") is { } refusal ? refusal
        : wort.Value > StrongWort ? 5
        : 8;

    /// <summary>Whether a stored yeast is to be counted before it is pitched.</summary>
    /// <param name="age">Since it was cropped.</param>
    /// <param name="warmest">The warmest it was kept.</param>
    /// <param name="barm">Alcohol of the beer it lies under, by volume.</param>
    /// <param name="guess">What <see cref="StorageViability"/> makes of it.</param>
    /// <remarks>
    /// Beyond 4 days, above 5 °C, under more than 8 % v/v, or below a guess of 85 %: the last three are ours, from the
    /// spread of the data.
    /// </remarks>
    public static bool NeedsCount(TimeSpan age, Temperature warmest, VolumeConcentration barm, ViabilityRange guess) =>
        age > LongestUncounted
        || warmest.DegreesCelsius > WarmestUncounted.DegreesCelsius
        || barm.Percent > 8
        || guess.Likely.Percent < 85;
}
