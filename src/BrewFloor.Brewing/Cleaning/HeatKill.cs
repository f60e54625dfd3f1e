using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>Pasteurisation units: minutes at 60 °C that kill as much.</summary>
/// <remarks>PU = t times 1.393^(T - 60), the form of Del Vecchio et al. 1951. From memory; check CI-08.</remarks>
public static class HeatKill
{
    private const double PerDegree = 1.393;

    /// <summary>The units, which are minutes at 60 °C.</summary>
    /// <param name="held">0 to 24 h.</param>
    /// <param name="temperature">50 to 85 °C, everywhere.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Duration> Units(TimeSpan held, Temperature temperature) =>
        RefusalOf(held, temperature) is { } refusal
            ? refusal
            : Duration.FromMinutes(held.TotalMinutes * Lethality(temperature));

    /// <summary>How long to hold for so many units.</summary>
    /// <param name="units">0 to 10,000 min.</param>
    /// <param name="temperature">50 to 85 °C, everywhere.</param>
    /// <returns>In min; refused outside.</returns>
    public static Outcome<Duration> TimeFor(Duration units, Temperature temperature) =>
        (Accepted.Between(0, 10_000, units.Minutes, "units", "PU") ?? RefusalOf(TimeSpan.Zero, temperature))
            is { } refusal
            ? refusal
            : Duration.FromMinutes(units.Minutes / Lethality(temperature));

    private static double Lethality(Temperature temperature) => Math.Pow(PerDegree, temperature.DegreesCelsius - 60);

    private static Refusal? RefusalOf(TimeSpan held, Temperature temperature) =>
        Accepted.Between(0, 24, held.TotalHours, "held", "h")
        ?? Accepted.Between(50, 85, temperature.DegreesCelsius, "temperature", "°C");
}
