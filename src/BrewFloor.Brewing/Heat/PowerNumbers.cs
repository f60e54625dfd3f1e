using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>UnitsNet keeps power, alone of all we use, as a decimal; formulas want doubles.</summary>
internal static class PowerNumbers
{
    public static double InWatts(this Power power) => (double)power.Watts;

    public static double InKilowatts(this Power power) => (double)power.Kilowatts;
}
