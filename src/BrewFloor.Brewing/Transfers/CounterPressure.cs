using BrewFloor.Brewing.Carbonation;
using UnitsNet;

namespace BrewFloor.Brewing.Transfers;

/// <summary>What a receiver is filled under, so that the beer does not foam on its way.</summary>
/// <param name="Least">Where foaming begins, kPa gauge; below zero for a flat beer.</param>
/// <param name="From">Least and 0.1 bar: kPa gauge.</param>
/// <param name="To">Least and 0.2 bar: kPa gauge.</param>
/// <remarks>
/// At every point the pressure must be at least that of the gas in the beer; the 0.1 to 0.2 bar above are common practice,
/// no source. The flow is set by venting the receiver. The warmest spot decides: give its temperature. Check TR-02.
/// </remarks>
public readonly record struct CounterPressure(Pressure Least, Pressure From, Pressure To)
{
    /// <summary>For a beer.</summary>
    /// <param name="content">What it holds.</param>
    /// <param name="warmest">The warmest spot from tank to receiver, 0 to 40 °C.</param>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CounterPressure> For(CarbonDioxideContent content, Temperature warmest, Length altitude)
    {
        var least = Equilibrium.GaugeFor(content, warmest, altitude);
        return least.Gives(out var gauge)
            ? new CounterPressure(
                gauge,
                Pressure.FromKilopascals(Math.Max(0, gauge.Kilopascals) + 10),
                Pressure.FromKilopascals(Math.Max(0, gauge.Kilopascals) + 20)
            )
            : least.Refusal!;
    }
}
