using UnitsNet;

namespace BrewFloor.Brewing.Room;

/// <summary>CO2 in the air people breathe. It pools low and kills; carry a CO2 meter, not an oxygen meter.</summary>
/// <remarks>
/// Ideal gas, air at one atmosphere, evenly mixed, which it isn't near the floor. Closed: all gas stays. Ventilated: C = G /
/// Q. Limits: 54 FR 2332 (1989) on the NIOSH site, NIOSH IDLH documentation 1994, UK HSE EH40. Checks CI-06, CI-07.
/// </remarks>
public static class RoomAir
{
    /// <summary>Eight hours, US (OSHA PEL) and UK (WEL): 5,000 ppm.</summary>
    public static VolumeConcentration EightHours => VolumeConcentration.FromPartsPerMillion(5000);

    /// <summary>A quarter of an hour, UK (WEL): 15,000 ppm.</summary>
    public static VolumeConcentration QuarterHourUk => VolumeConcentration.FromPartsPerMillion(15_000);

    /// <summary>Short term, US (ACGIH): 30,000 ppm.</summary>
    public static VolumeConcentration ShortTermUs => VolumeConcentration.FromPartsPerMillion(30_000);

    /// <summary>Immediately dangerous to life (NIOSH): 40,000 ppm.</summary>
    public static VolumeConcentration Dangerous => VolumeConcentration.FromPartsPerMillion(40_000);

    /// <summary>The gas's volume in the room.</summary>
    /// <param name="gas">0 to 1,000,000 kg of CO2.</param>
    /// <param name="room">Its temperature, -10 to 50 °C.</param>
    /// <returns>In m³; refused outside.</returns>
    public static Outcome<Volume> VolumeOf(Mass gas, Temperature room) =>
        (
            Accepted.Between(0, 1_000_000, gas.Kilograms, "gas", "kg")
            ?? Accepted.Between(-10, 50, room.DegreesCelsius, "temperature", "°C")
        )
            is { } refusal
            ? refusal
            : Volume.FromCubicMeters(gas.Kilograms / IdealGas.Grams(1, 1.01325, room.Kelvins, IdealGas.CarbonDioxide));

    /// <summary>All of it in a closed room: by volume of the room's air.</summary>
    /// <param name="gas">0 to 1,000,000 kg of CO2.</param>
    /// <param name="space">1 to 1,000,000 m³.</param>
    /// <param name="room">Its temperature, -10 to 50 °C.</param>
    /// <returns>Refused outside. More gas than room: all of it is CO2.</returns>
    public static Outcome<VolumeConcentration> Closed(Mass gas, Volume space, Temperature room)
    {
        var volume = VolumeOf(gas, room);
        var refusal = volume.Refusal ?? Accepted.Between(1, 1_000_000, space.CubicMeters, "room", "m³");
        return refusal is null
            ? VolumeConcentration.FromDecimalFractions(Math.Min(1, volume.Value.CubicMeters / space.CubicMeters))
            : refusal;
    }

    /// <summary>Where it settles with fresh air coming in, above what the fresh air brings.</summary>
    /// <param name="released">0 to 10,000 kg of CO2 an hour.</param>
    /// <param name="fresh">1 to 1,000,000 m³/h.</param>
    /// <param name="room">Its temperature, -10 to 50 °C.</param>
    /// <returns>Refused outside. More gas than fresh air: all of it is CO2.</returns>
    public static Outcome<VolumeConcentration> Ventilated(MassFlow released, VolumeFlow fresh, Temperature room)
    {
        var hourly = VolumeOf(Mass.FromKilograms(released.KilogramsPerHour), room);
        var refusal =
            Accepted.Between(0, 10_000, released.KilogramsPerHour, "released", "kg/h")
            ?? hourly.Refusal
            ?? Accepted.Between(1, 1_000_000, fresh.CubicMetersPerHour, "fresh-air", "m³/h");
        return refusal is null
            ? VolumeConcentration.FromDecimalFractions(Math.Min(1, hourly.Value.CubicMeters / fresh.CubicMetersPerHour))
            : refusal;
    }

    /// <summary>Fresh air that keeps a limit; the inverse of <see cref="Ventilated"/>.</summary>
    /// <param name="released">0 to 10,000 kg of CO2 an hour.</param>
    /// <param name="limit">100 to 100,000 ppm above the fresh air's own.</param>
    /// <param name="room">Its temperature, -10 to 50 °C.</param>
    /// <returns>In m³/h; refused outside.</returns>
    public static Outcome<VolumeFlow> FreshAirFor(MassFlow released, VolumeConcentration limit, Temperature room)
    {
        var hourly = VolumeOf(Mass.FromKilograms(released.KilogramsPerHour), room);
        var refusal =
            Accepted.Between(0, 10_000, released.KilogramsPerHour, "released", "kg/h")
            ?? hourly.Refusal
            ?? Accepted.Between(100, 100_000, limit.PartsPerMillion, "limit", "ppm");
        return refusal is null
            ? VolumeFlow.FromCubicMetersPerHour(hourly.Value.CubicMeters / limit.DecimalFractions)
            : refusal;
    }
}
