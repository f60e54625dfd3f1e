using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>How much of a stored slurry may still live.</summary>
/// <param name="Likely">In %.</param>
/// <param name="Low">In %, if it dies twice as fast.</param>
/// <param name="High">In %, if it dies half as fast.</param>
public readonly record struct ViabilityRange(Ratio Likely, Ratio Low, Ratio High);

/// <summary>A guess at how yeast dies in the cold store: to say when to count, never instead of counting.</summary>
/// <remarks>
/// V = V0 exp(-k t), k = 0.0124 exp(0.110 T) per day. Our fit to three points of one lager strain over six days (McCaig,
/// Bendiak 1985, MBAA Tech. Q., abstract), so k is uncertain by a factor of two either way, which the range shows; strains
/// differ more. Check YE-05.
/// </remarks>
public static class StorageViability
{
    private const double PerDayAtZero = 0.0124;

    private const double PerDegree = 0.110;

    private const double EitherWay = 2;

    /// <summary>What may live after some time at one temperature.</summary>
    /// <param name="counted">Living share when last counted, 0 to 100 %.</param>
    /// <param name="age">Since then, 0 to 30 days; the data end at six.</param>
    /// <param name="kept">0 to 25 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<ViabilityRange> After(Ratio counted, TimeSpan age, Temperature kept)
    {
        var refusal =
            Accepted.Between(0, 100, counted.Percent, "viability", "%")
            ?? Accepted.Between(0, 30, age.TotalDays, "age", "d")
            ?? Accepted.Between(0, 25, kept.DegreesCelsius, "temperature", "°C");
        if (refusal is not null)
        {
            return refusal;
        }

        var lost = PerDayAtZero * Math.Exp(PerDegree * kept.DegreesCelsius) * age.TotalDays;
        return new ViabilityRange(
            Left(counted, lost),
            Left(counted, lost * EitherWay),
            Left(counted, lost / EitherWay)
        );
    }

    private static Ratio Left(Ratio counted, double lost) => Ratio.FromPercent(counted.Percent * Math.Exp(-lost));
}
