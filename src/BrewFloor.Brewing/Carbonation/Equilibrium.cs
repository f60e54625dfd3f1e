using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>Beer at rest under CO2: what it holds at a pressure, and which pressure holds it.</summary>
/// <remarks>
/// <see cref="CarbonDioxideSolubility"/>, with the gauge's zero where <see cref="Atmosphere"/> says. The headspace is
/// taken to be all CO2: air in it counts on the gauge and not in the beer. Rest takes days without agitation, and a metre
/// of beer adds 0.1 bar. Checks CO-01 to CO-10, CO-16, TR-02.
/// </remarks>
public static class Equilibrium
{
    /// <summary>So far the solubility is taken to go with the pressure, kPa absolute.</summary>
    internal static Pressure Highest => Pressure.FromKilopascals(1000);

    /// <summary>One standard error of what a beer holds, of the answer.</summary>
    public static Ratio PlusMinus => Ratio.FromPercent(3);

    /// <summary>What the beer holds.</summary>
    /// <param name="temperature">0 to 40 °C.</param>
    /// <param name="gauge">From a vacuum (minus the air's own pressure) to 1,000 kPa absolute.</param>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonDioxideContent> ContentAt(Temperature temperature, Pressure gauge, Length altitude)
    {
        var air = Atmosphere.At(altitude);
        if ((CarbonDioxideSolubility.RefusalOf(temperature, "temperature") ?? air.Refusal) is { } refusal)
        {
            return refusal;
        }

        var (zero, kpa) = (air.Value.Kilopascals, gauge.Kilopascals);
        return Accepted.Between(-zero, Highest.Kilopascals - zero, kpa, "pressure-gauge", "kPa") is { } outside
            ? outside
            : CarbonDioxideContent.Found(CarbonDioxideSolubility.BeerPerBar(temperature) * (zero + kpa) / 100);
    }

    /// <summary>The pressure that holds it, kPa gauge; below zero for a beer that is flatter than open beer.</summary>
    /// <param name="content">Wanted.</param>
    /// <param name="temperature">0 to 40 °C.</param>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside, and where it takes more than 1,000 kPa absolute.</returns>
    public static Outcome<Pressure> GaugeFor(CarbonDioxideContent content, Temperature temperature, Length altitude)
    {
        var air = Atmosphere.At(altitude);
        if ((CarbonDioxideSolubility.RefusalOf(temperature, "temperature") ?? air.Refusal) is { } refusal)
        {
            return refusal;
        }

        var perBar = CarbonDioxideSolubility.BeerPerBar(temperature);
        return Accepted.Between(0, perBar * 10, content.GramsPerLitre, "carbonation", "g/L") is { } tooMuch
            ? tooMuch
            : Pressure.FromKilopascals((content.GramsPerLitre / perBar * 100) - air.Value.Kilopascals);
    }
}
