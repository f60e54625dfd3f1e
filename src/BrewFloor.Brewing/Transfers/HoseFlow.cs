using UnitsNet;

namespace BrewFloor.Brewing.Transfers;

/// <summary>A liquid in a hose.</summary>
/// <param name="Bore">Inside diameter, 1 to 200 mm.</param>
/// <param name="Length">0 to 200 m.</param>
/// <param name="Rise">End over beginning, -20 to 20 m.</param>
/// <param name="Density">500 to 1,500 kg/m³.</param>
/// <param name="Viscosity">
/// 0.2 to 20 mPa s: water 1.002 at 20 °C; beer 2.42 at 6 °C (Liger-Belair, Cilindre 2021, PMC8047704).
/// </param>
public readonly record struct Hose(
    Length Bore,
    Length Length,
    Length Rise,
    Density Density,
    DynamicViscosity Viscosity
);

/// <summary>What a flow does in a hose.</summary>
/// <param name="Speed">In m/s.</param>
/// <param name="Reynolds">Below 2,300 it runs smoothly, from 4,000 it tumbles.</param>
/// <param name="Friction">Pressure that the wall takes, kPa.</param>
/// <param name="Drop">Friction and rise together, kPa; below zero where the fall drives it.</param>
/// <remarks>
/// Source: Darcy-Weisbach; 64 / Re below 2,300, Blasius 0.3164 Re^-0.25 from 4,000 to 100,000, smooth wall. Fittings come
/// on top. Check TR-01.
/// </remarks>
public readonly record struct HoseFlow(Speed Speed, double Reynolds, Pressure Friction, Pressure Drop)
{
    private const double Gravity = 9.80665;

    /// <summary>At a flow.</summary>
    /// <param name="flow">0.01 to 10,000 L/min.</param>
    /// <param name="hose">What it runs through.</param>
    /// <returns>Refused outside, and between smooth and tumbling, where no law holds (the range says from where).</returns>
    public static Outcome<HoseFlow> Of(VolumeFlow flow, Hose hose)
    {
        if (RefusalOf(flow, hose) is { } refusal)
        {
            return refusal;
        }

        var (d, rho) = (hose.Bore.Meters, hose.Density.KilogramsPerCubicMeter);
        var v = flow.CubicMetersPerSecond / (Math.PI * d * d / 4);
        var re = rho * v * d / hose.Viscosity.PascalSeconds;
        if (re > 2300 && Accepted.Between(4000, 100_000, re, "reynolds") is { } lawless)
        {
            return lawless;
        }

        var factor = re <= 2300 ? 64 / re : 0.3164 * Math.Pow(re, -0.25);
        var friction = factor * hose.Length.Meters / d * rho * v * v / 2;
        var rise = rho * Gravity * hose.Rise.Meters;
        return new HoseFlow(
            Speed.FromMetersPerSecond(v),
            re,
            Pressure.FromKilopascals(friction / 1000),
            Pressure.FromKilopascals((friction + rise) / 1000)
        );
    }

    private static Refusal? RefusalOf(VolumeFlow flow, Hose hose) =>
        Accepted.Between(0.01, 10_000, flow.LitersPerMinute, "flow", "L/min")
        ?? Accepted.Between(1, 200, hose.Bore.Millimeters, "bore", "mm")
        ?? Accepted.Between(0, 200, hose.Length.Meters, "length", "m")
        ?? Accepted.Between(-20, 20, hose.Rise.Meters, "rise", "m")
        ?? Accepted.Between(500, 1500, hose.Density.KilogramsPerCubicMeter, "density", "kg/m³")
        ?? Accepted.Between(0.2, 20, hose.Viscosity.MillipascalSeconds, "viscosity", "mPa s");
}
