using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>Heat through an insulated wall, and a pad against it.</summary>
/// <remarks>
/// q = A dT / (s / k + 1 / h). Foam 0.035 to 0.040 W/(m K), air outside about 8 W/(m² K) (common practice, no source).
/// Check HE-06. A pad has 1.3 times the loss (the same), a sensor and a cut-out of its own, and never heats an empty tank.
/// </remarks>
public static class WallGain
{
    private const double PadReserve = 1.3;

    /// <summary>What a wall lets through for each kelvin.</summary>
    /// <param name="area">0.001 to 10,000 m².</param>
    /// <param name="thickness">Of the insulation, 0 to 500 mm; with none the air must be given.</param>
    /// <param name="foam">0.01 to 1 W/(m K).</param>
    /// <param name="air">Film outside, 1 to 50 W/(m² K); nothing to leave it out.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<HeatPassage> Through(
        Area area,
        Length thickness,
        ThermalConductivity foam,
        HeatTransferCoefficient? air
    )
    {
        var refusal =
            Accepted.Between(0.001, 10_000, area.SquareMeters, "area", "m²")
            ?? Accepted.Between(air is null ? 1 : 0, 500, thickness.Millimeters, "thickness", "mm")
            ?? Accepted.Between(0.01, 1, foam.WattsPerMeterKelvin, "conductivity", "W/(m K)")
            ?? (
                air is { } given
                    ? Accepted.Between(1, 50, given.WattsPerSquareMeterKelvin, "air-film", "W/(m² K)")
                    : null
            );
        if (refusal is not null)
        {
            return refusal;
        }

        var film = air is { } known ? 1 / known.WattsPerSquareMeterKelvin : 0;
        return new HeatPassage(area.SquareMeters / ((thickness.Meters / foam.WattsPerMeterKelvin) + film));
    }

    /// <summary>What comes in, W; below zero what goes out.</summary>
    /// <param name="wall">Its passage.</param>
    /// <param name="room">-30 to 60 °C.</param>
    /// <param name="beer">-5 to 100 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Power> Into(HeatPassage wall, Temperature room, Temperature beer) =>
        (
            wall.Refusal
            ?? Accepted.Between(-30, 60, room.DegreesCelsius, "room", "°C")
            ?? Accepted.Between(-5, 100, beer.DegreesCelsius, "beer-temperature", "°C")
        )
            is { } refusal
            ? refusal
            : Power.FromWatts(wall.WattsPerKelvin * (room.Kelvins - beer.Kelvins));

    /// <summary>A pad that holds beer warm, W; nothing where the room is warm enough.</summary>
    /// <param name="wall">Its passage.</param>
    /// <param name="room">The coldest it gets, -30 to 60 °C.</param>
    /// <param name="beer">-5 to 100 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Power> PadFor(HeatPassage wall, Temperature room, Temperature beer)
    {
        var into = Into(wall, room, beer);
        return into.Gives(out var power) ? Power.FromWatts(Math.Max(0, -power.InWatts()) * PadReserve) : into.Refusal!;
    }
}
