using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>What fermenting extract gives off.</summary>
/// <typeparam name="T">A quantity of heat.</typeparam>
/// <param name="Likely">By 587 kJ for a kilogram of real extract.</param>
/// <param name="Low">By 555.</param>
/// <param name="High">By 650.</param>
public readonly record struct HeatRange<T>(T Likely, T Low, T High);

/// <summary>The heat of a fermentation: all of it, now, and at its peak.</summary>
/// <remarks>
/// 587 kJ from a kilogram of real extract, 555 to 650 (common practice, no source; thermochemistry gives 563 for glucose
/// and about 604 for maltose, check HE-01). Figures twice as high are free energy, not heat. Size cooling for 1.5 times the
/// peak (common practice, no source). Checks HE-01 to HE-03.
/// </remarks>
public static class FermentationHeat
{
    private const double Usual = 587;

    private const double Least = 555;

    private const double Most = 650;

    /// <summary>From a kilogram of real extract, kJ/kg.</summary>
    public static HeatRange<SpecificEnergy> PerExtract =>
        new(
            SpecificEnergy.FromKilojoulesPerKilogram(Usual),
            SpecificEnergy.FromKilojoulesPerKilogram(Least),
            SpecificEnergy.FromKilojoulesPerKilogram(Most)
        );

    /// <summary>From a kilogram of glucose by its enthalpies of formation, kJ/kg: a check on the figures above.</summary>
    /// <remarks>Aqueous glucose -1262.2, aqueous ethanol -288.3, CO2 gas -393.51 kJ/mol (CODATA, NBS tables).</remarks>
    public static SpecificEnergy OfGlucose =>
        SpecificEnergy.FromKilojoulesPerKilogram(-((2 * -288.3) + (2 * -393.51) - -1262.2) / 0.180156);

    /// <summary>All of a batch's heat, kJ.</summary>
    /// <param name="fermented">What the wort became.</param>
    public static HeatRange<Energy> Of(Fermented fermented) =>
        Scaled(kilojoules => Energy.FromKilojoules(fermented.Extract.Kilograms * kilojoules));

    /// <summary>How much warmer a batch would get if nothing cooled it.</summary>
    /// <param name="fermented">What the wort became.</param>
    /// <param name="heat">Specific heat of wort, 3 to 4.3 kJ/(kg K): 4.0 is usual.</param>
    /// <returns>In K; refused outside, and for no wort.</returns>
    public static Outcome<TemperatureDelta> Warming(Fermented fermented, SpecificEntropy heat) =>
        (SpecificHeat.RefusalOf(heat) ?? Accepted.Between(0.001, 1e7, fermented.Wort.Kilograms, "wort", "kg"))
            is { } refusal
            ? refusal
            : TemperatureDelta.FromKelvins(
                fermented.Extract.Kilograms * Usual / fermented.Wort.Kilograms / heat.KilojoulesPerKilogramKelvin
            );

    /// <summary>The heat at this moment, W.</summary>
    /// <param name="wort">0 to 10,000,000 kg.</param>
    /// <param name="realPerDay">How fast the real extract falls, 0 to 30 °P a day.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<HeatRange<Power>> At(Mass wort, DegreesPlato realPerDay) =>
        (Accepted.Kilograms(wort, "wort") ?? Accepted.Between(0, 30, realPerDay.Value, "fall-per-day", "°P"))
            is { } refusal
            ? refusal
            : Scaled(kilojoules =>
                Power.FromWatts(wort.Kilograms * realPerDay.Value / 100 * kilojoules * 1000 / 86_400)
            );

    /// <summary>The heat at its peak, W, when the extract falls along a logistic: rate times the fall over four.</summary>
    /// <param name="wort">0 to 10,000,000 kg.</param>
    /// <param name="from">Real extract at the start, °P.</param>
    /// <param name="to">Real extract at the end, 0 °P to the start's.</param>
    /// <param name="steepness">B of the logistic, 0.1 to 12 a day: 2.4 for a brisk ale, 0.7 for a lager.</param>
    /// <returns>Refused outside, and where the peak is above 30 °P a day.</returns>
    public static Outcome<HeatRange<Power>> AtPeak(Mass wort, DegreesPlato from, DegreesPlato to, Frequency steepness)
    {
        var perDay = steepness.Hertz * 86_400;
        var refusal =
            Accepted.Between(0, 40, from.Value, "original-extract", "°P")
            ?? Accepted.Between(0, from.Value, to.Value, "real-extract", "°P")
            ?? Accepted.Between(0.1, 12, perDay, "steepness", "1/d");
        return refusal is null ? At(wort, new DegreesPlato(perDay * (from.Value - to.Value) / 4)) : refusal;
    }

    private static HeatRange<T> Scaled<T>(Func<double, T> of) => new(of(Usual), of(Least), of(Most));
}
