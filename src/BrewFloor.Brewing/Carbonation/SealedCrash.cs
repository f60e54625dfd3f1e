using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>A closed tank of beer under CO2, come to rest.</summary>
/// <param name="Beer">In litres.</param>
/// <param name="Headspace">Above the beer, in litres, all CO2.</param>
/// <param name="Temperature">Of both, 0 to 40 °C.</param>
/// <param name="Absolute">Pressure, kPa absolute (gauge plus <see cref="Atmosphere"/>).</param>
public readonly record struct SealedTank(Volume Beer, Volume Headspace, Temperature Temperature, Pressure Absolute);

/// <summary>What a crash does to a sealed tank.</summary>
/// <param name="Settled">kPa absolute once the cold beer has taken up CO2, which takes hours to days.</param>
/// <param name="GasAlone">kPa absolute at once, from the gas shrinking alone.</param>
public readonly record struct CrashEnd(Pressure Settled, Pressure GasAlone);

/// <summary>Cold beer takes up CO2 and cold gas shrinks: a tank sealed at no pressure pulls a vacuum.</summary>
/// <remarks>
/// Mass balance of CO2 over beer and headspace, ideal gas, <see cref="CarbonDioxideSolubility"/>; beer and tank keep their
/// volume. As good as the solubility, about 3 %, and as its assumption: a beer that had taken up less than it can at the
/// start pulls deeper. It warns; no number makes a sealed crash safe. Checks CO-22, CO-23.
/// </remarks>
public static class SealedCrash
{
    private const double Least = 0.01; // L, of gas, where there is no beer

    private const double Largest = 10_000_000; // L, more than any tank the floor can describe

    /// <summary>Where the pressure ends.</summary>
    /// <param name="tank">As it is sealed.</param>
    /// <param name="to">Crash temperature, 0 °C to the tank's own.</param>
    /// <returns>Refused outside, and for a tank of no size.</returns>
    public static Outcome<CrashEnd> EndOf(SealedTank tank, Temperature to)
    {
        if (RefusalOf(tank, to) is { } refusal)
        {
            return refusal;
        }

        var settled = Pressure.FromBars(
            tank.Absolute.Bars * GramsPerBar(tank) / GramsPerBar(tank with { Temperature = to })
        );
        var alone = tank.Absolute * (to.Kelvins / tank.Temperature.Kelvins);
        return new CrashEnd(Stored(settled), Stored(alone));
    }

    /// <summary>CO2 to feed so that the pressure ends as wished, in grams; nothing when it ends there anyway.</summary>
    /// <param name="tank">As it is sealed.</param>
    /// <param name="to">Crash temperature, 0 °C to the tank's own.</param>
    /// <param name="absolute">Pressure to hold, 0 to 1,000 kPa absolute.</param>
    /// <returns>Refused outside, and for a tank of no size.</returns>
    public static Outcome<Mass> ToHold(SealedTank tank, Temperature to, Pressure absolute)
    {
        if ((RefusalOf(tank, to) ?? CarbonDioxideSolubility.RefusalOf(absolute)) is { } refusal)
        {
            return refusal;
        }

        var (has, needs) = (GramsPerBar(tank), GramsPerBar(tank with { Temperature = to }));
        return Mass.FromGrams(Math.Max(0, (absolute.Bars * needs) - (tank.Absolute.Bars * has)));
    }

    // What beer and headspace together hold, at rest.
    private static double GramsPerBar(SealedTank tank) =>
        (tank.Beer.Liters * CarbonDioxideSolubility.BeerPerBar(tank.Temperature))
        + IdealGas.Grams(tank.Headspace.Liters, 1, tank.Temperature.Kelvins, IdealGas.CarbonDioxide);

    private static Pressure Stored(Pressure pressure) => pressure.ToUnit(UnitsNet.Units.PressureUnit.Kilopascal);

    private static Refusal? RefusalOf(SealedTank tank, Temperature to) =>
        Accepted.Between(0, Largest, tank.Beer.Liters, "beer", "L")
        ?? Accepted.Between(tank.Beer.Liters > 0 ? 0 : Least, Largest, tank.Headspace.Liters, "headspace", "L")
        ?? CarbonDioxideSolubility.RefusalOf(tank.Temperature, "temperature")
        ?? CarbonDioxideSolubility.RefusalOf(tank.Absolute)
        ?? Accepted.Between(0, tank.Temperature.DegreesCelsius, to.DegreesCelsius, "crash-temperature", "°C");
}
