using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Temperatures that a thermometer or a controller of a cellar can show.</summary>
public static class Readable
{
    // Ours, no source: beyond these it is a slip of the unit or a broken probe, not glycol and not steam.
    private const double Lowest = -20;

    private const double Highest = 130;

    /// <summary>Impossible: outside -20 to 130 °C.</summary>
    public static IEnumerable<Objection> Objections(Temperature temperature)
    {
        if (temperature.DegreesCelsius is not (>= Lowest and <= Highest))
        {
            yield return Objection.Impossible(
                "temperature-unreadable",
                new("temperature", temperature),
                new("from", Temperature.FromDegreesCelsius(Lowest)),
                new("to", Temperature.FromDegreesCelsius(Highest))
            );
        }
    }
}
