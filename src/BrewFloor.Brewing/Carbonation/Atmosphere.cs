using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>What the air weighs where the brewery stands: gauge pressure plus this is absolute pressure.</summary>
/// <remarks>Source: US Standard Atmosphere (ICAO), the mean of all weather. Check CO-20.</remarks>
public static class Atmosphere
{
    /// <summary>In kPa absolute; 101.325 at the sea.</summary>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Pressure> At(Length altitude) =>
        Accepted.Between(-500, 5000, altitude.Meters, "altitude", "m") is { } refusal
            ? refusal
            : Pressure.FromKilopascals(101.325 * Math.Pow(1 - (2.25577e-5 * altitude.Meters), 5.25588));

    /// <summary>What a gauge must show more than at the sea for the same carbonation, kPa.</summary>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    /// <remarks>
    /// The absolute pressure is what the beer feels. A published draught chart adds 0.5 psi per 1,000 ft: it agrees. Check
    /// CO-21.
    /// </remarks>
    public static Outcome<Pressure> GaugeShift(Length altitude) =>
        At(altitude) switch
        {
            { Refusal: { } refusal } => refusal,
            { Value: var air } => Pressure.FromKilopascals(101.325 - air.Kilopascals),
        };
}
