using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>What gas a beer has kept from an open fermentation.</summary>
/// <remarks>
/// It follows the highest temperature since the last gas came, not the one it has now. Right after fermentation a beer
/// may hold up to 1.3 times as much (from memory), after purging less. Check CO-15.
/// </remarks>
public static class ResidualGas
{
    /// <summary>Either way: 0.1 volumes.</summary>
    public static CarbonDioxideContent PlusMinus => CarbonDioxideContent.OfVolumes(0.1).Value;

    /// <summary>After a vented fermentation.</summary>
    /// <param name="highest">The highest temperature since CO2 stopped, 0 to 40 °C.</param>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonDioxideContent> After(Temperature highest, Length altitude) =>
        Equilibrium.ContentAt(highest, Pressure.Zero, altitude);
}
