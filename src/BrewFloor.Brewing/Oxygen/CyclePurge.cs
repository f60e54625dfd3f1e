using UnitsNet;

namespace BrewFloor.Brewing.Oxygen;

/// <summary>Purging by pressing up and letting off, again and again.</summary>
/// <param name="Low">Let off to, kPa absolute, 1 to 500.</param>
/// <param name="High">Pressed up to, kPa absolute, above <paramref name="Low"/>, to 1,000. Never above the tank's rating.</param>
/// <param name="SupplyOxygen">In the purge gas, 0 to 10,000 ppm by volume: a floor that no cycle gets under.</param>
/// <remarks>
/// y_n = y_s + (y_0 - y_s) (PL / PH)^n, absolute pressures. Source: Crowl, Louvar, Chemical Process Safety, chapter 7, by
/// way of a teaching module; the gas is taken to mix at each cycle. Checks OX-05, OX-07, OX-08.
/// </remarks>
public readonly record struct CyclePurge(Pressure Low, Pressure High, VolumeConcentration SupplyOxygen = default)
{
    /// <summary>Oxygen left after so many cycles, by volume.</summary>
    /// <param name="before">0 to 100 %; air has 20.95.</param>
    /// <param name="cycles">0 to 100.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<VolumeConcentration> After(VolumeConcentration before, int cycles) =>
        (RefusalOf(before) ?? Accepted.Between(0, 100, cycles, "cycles")) is { } refusal
            ? refusal
            : VolumeConcentration.FromPercent(
                Supply + ((before.Percent - Supply) * Math.Pow(Low.Kilopascals / High.Kilopascals, cycles))
            );

    /// <summary>Cycles until no more than so much is left; whole cycles are the next number up.</summary>
    /// <param name="before">0 to 100 %; air has 20.95.</param>
    /// <param name="wanted">At least 1 ppm above the supply's own, to the one before.</param>
    /// <returns>With decimals, as the formula gives it; refused outside.</returns>
    public Outcome<double> CyclesTo(VolumeConcentration before, VolumeConcentration wanted) =>
        (
            RefusalOf(before)
            ?? Accepted.Between(Cleanest, 100, before.Percent, "oxygen-before", "%")
            ?? Accepted.Between(Cleanest, before.Percent, wanted.Percent, "oxygen-wanted", "%")
        )
            is { } refusal
            ? refusal
            : Math.Log((before.Percent - Supply) / (wanted.Percent - Supply))
                / Math.Log(High.Kilopascals / Low.Kilopascals);

    /// <summary>Gas for one cycle, kg of CO2.</summary>
    /// <param name="space">What is purged, 0 to 10,000,000 L.</param>
    /// <param name="temperature">-5 to 100 °C.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Mass> GasOfOne(Volume space, Temperature temperature) =>
        (
            RefusalOf(VolumeConcentration.Zero)
            ?? Accepted.Litres(space, "space")
            ?? Accepted.Between(-5, 100, temperature.DegreesCelsius, "temperature", "°C")
        )
            is { } refusal
            ? refusal
            : Mass.FromKilograms(
                IdealGas.Grams(space.Liters, High.Bars - Low.Bars, temperature.Kelvins, IdealGas.CarbonDioxide) / 1000
            );

    private double Supply => SupplyOxygen.Percent;

    // A millionth above what the gas itself brings: no cycle gets under that.
    private double Cleanest => Math.Round(Supply + 0.0001, 5);

    private Refusal? RefusalOf(VolumeConcentration before) =>
        Accepted.Between(1, 500, Low.Kilopascals, "pressure-low", "kPa")
        ?? Accepted.Between(Low.Kilopascals + 1, 1000, High.Kilopascals, "pressure-high", "kPa")
        ?? Accepted.Between(0, 10_000, SupplyOxygen.PartsPerMillion, "supply-oxygen", "ppm")
        ?? Accepted.Between(0, 100, before.Percent, "oxygen", "%");
}
