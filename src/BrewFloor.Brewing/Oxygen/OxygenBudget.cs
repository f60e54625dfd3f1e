using UnitsNet;

namespace BrewFloor.Brewing.Oxygen;

/// <summary>Where a batch's oxygen comes from.</summary>
public enum OxygenSource
{
    /// <summary>Dissolved already.</summary>
    Beer,

    /// <summary>In the gas above it.</summary>
    Headspace,

    /// <summary>In hops that were thrown in.</summary>
    Hops,

    /// <summary>Dissolved in water or other liquid that was added.</summary>
    Liquid,
}

/// <summary>One share of a batch's oxygen.</summary>
/// <param name="Source">Where from.</param>
/// <param name="Oxygen">In mg.</param>
public readonly record struct OxygenShare(OxygenSource Source, Mass Oxygen)
{
    private const double VoidPerKilogram = 0.9; // L of air in 1 kg of pellets, from 0.09 L in 100 g

    /// <summary>Dissolved in beer, or in a liquid added to it.</summary>
    /// <param name="source">Beer or liquid.</param>
    /// <param name="volume">0 to 10,000,000 L.</param>
    /// <param name="dissolved">0 to 50 mg/L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<OxygenShare> Dissolved(OxygenSource source, Volume volume, MassConcentration dissolved) =>
        (
            Accepted.Litres(volume, "volume")
            ?? Accepted.Between(0, 50, dissolved.MilligramsPerLiter, "dissolved-oxygen", "mg/L")
        )
            is { } refusal
            ? refusal
            : new OxygenShare(source, Mass.FromMilligrams(volume.Liters * dissolved.MilligramsPerLiter));

    /// <summary>In the headspace, as if all of it went into the beer in time: y p V M / (R T).</summary>
    /// <param name="headspace">0 to 10,000,000 L.</param>
    /// <param name="oxygen">By volume, 0 to 100 %.</param>
    /// <param name="absolute">0 to 1,000 kPa absolute.</param>
    /// <param name="temperature">-5 to 40 °C.</param>
    /// <returns>Refused outside.</returns>
    /// <remarks>Ideal gas. Check OX-11.</remarks>
    public static Outcome<OxygenShare> InHeadspace(
        Volume headspace,
        VolumeConcentration oxygen,
        Pressure absolute,
        Temperature temperature
    ) =>
        (
            Accepted.Litres(headspace, "headspace")
            ?? Accepted.Between(0, 100, oxygen.Percent, "oxygen", "%")
            ?? Accepted.Between(0, 1000, absolute.Kilopascals, "pressure-absolute", "kPa")
            ?? Accepted.Between(-5, 40, temperature.DegreesCelsius, "temperature", "°C")
        )
            is { } refusal
            ? refusal
            : new OxygenShare(
                OxygenSource.Headspace,
                Mass.FromMilligrams(
                    1000
                        * oxygen.DecimalFractions
                        * IdealGas.Grams(headspace.Liters, absolute.Bars, temperature.Kelvins, IdealGas.Oxygen)
                )
            );

    /// <summary>In the air between pellets, at one atmosphere and 20 °C, or what purging left of it.</summary>
    /// <param name="pellets">0 to 10,000 kg; 100 g hold about 0.09 L of air (computed).</param>
    /// <param name="oxygen">Of that gas, 0 to 100 %: 20.95 when nobody purged.</param>
    /// <returns>Refused outside.</returns>
    /// <remarks>Ideal gas. Check OX-09.</remarks>
    public static Outcome<OxygenShare> InHops(Mass pellets, VolumeConcentration oxygen)
    {
        if (Accepted.Between(0, 10_000, pellets.Kilograms, "hops", "kg") is { } refusal)
        {
            return refusal;
        }

        var air = InHeadspace(
            Volume.FromLiters(pellets.Kilograms * VoidPerKilogram),
            oxygen,
            Pressure.FromBars(1.01325),
            Temperature.FromDegreesCelsius(20)
        );
        return air.Gives(out var share) ? share with { Source = OxygenSource.Hops } : air.Refusal!;
    }
}

/// <summary>All of a batch's oxygen, if all of it ends in the beer.</summary>
/// <param name="Total">In mg.</param>
/// <param name="InBeer">In µg/L, which is ppb.</param>
/// <param name="Shares">The largest first.</param>
/// <remarks>
/// A sum. As targets, total oxygen under 50 ppb is excellent, under 100 good, above 200 short-lived (common practice, no
/// source).
/// </remarks>
public sealed record OxygenBudget(Mass Total, MassConcentration InBeer, IReadOnlyList<OxygenShare> Shares)
{
    /// <summary>For a batch.</summary>
    /// <param name="beer">0.01 to 10,000,000 L.</param>
    /// <param name="shares">Everything that brings oxygen.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<OxygenBudget> For(Volume beer, IEnumerable<OxygenShare> shares)
    {
        if (Accepted.SomeLitres(beer, "beer") is { } refusal)
        {
            return refusal;
        }

        OxygenShare[] sorted = [.. shares.OrderByDescending(s => s.Oxygen.Milligrams)];
        var total = sorted.Sum(s => s.Oxygen.Milligrams);
        return new OxygenBudget(
            Mass.FromMilligrams(total),
            MassConcentration.FromMicrogramsPerLiter(1000 * total / beer.Liters),
            sorted
        );
    }
}
