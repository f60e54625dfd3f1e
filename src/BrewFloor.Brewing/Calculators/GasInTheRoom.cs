using BrewFloor.Brewing.Room;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class GasInTheRoom
{
    public static Calculator Question { get; } =
        new("room", Subject.Room)
        {
            Cautions = ["room-gas"],
            Inputs =
            [
                Asks.Measured("released", Measure.Mass, 0, 1_000_000, 1),
                Asks.Measured("room-size", Measure.Space, 1, 1_000_000, 60),
                Asks.Measured("temperature", Measure.Temperature, -10, 50, 18),
                Asks.Measured("released-hourly", Measure.Release, 0, 10_000, 0.2),
                Asks.Measured("fresh-air", Measure.Air, 1, 1_000_000, 60),
                Asks.Usual("outside", Measure.PartsPerMillion, 0, 4000, 420),
            ],
            Formula =
            [
                "closed: ppm = outside + m R T / (M p) / room",
                "with fresh air: ppm = outside + hourly volume / fresh air",
                "fresh air for a limit = hourly volume / (limit - outside)",
            ],
            Sources =
            [
                "Ideal gas, evenly mixed, which it isn't near the floor",
                "5,000 ppm in eight hours: 54 FR 2332 (1989), UK HSE EH40; 15,000 in a quarter of an hour: UK HSE EH40",
                "30,000 ppm for a short while: ACGIH; 40,000 ppm: NIOSH IDLH documentation 1994",
                "420 ppm outside: from memory; it rises by the year",
            ],
            Checks = ["CI-06", "CI-07", "RO-01"],
            Plot = new Plot("fresh-air", "ppm-ventilated", 5, 200),
            Compute = given =>
                from closed in RoomAir.Closed(
                    given.Mass("released"),
                    given.Space("room-size"),
                    given.Temperature("temperature")
                )
                from settled in RoomAir.Ventilated(
                    Hourly(given),
                    VolumeFlow.FromCubicMetersPerHour(given.Number("fresh-air")),
                    given.Temperature("temperature")
                )
                let outside = VolumeConcentration.FromPartsPerMillion(given.Number("outside"))
                from needed in RoomAir.FreshAirFor(
                    Hourly(given),
                    RoomAir.EightHours - outside,
                    given.Temperature("temperature")
                )
                select Found(With(closed, outside), With(settled, outside), needed),
        };

    private static MassFlow Hourly(Given given) => MassFlow.FromKilogramsPerHour(given.Number("released-hourly"));

    private static VolumeConcentration With(VolumeConcentration gas, VolumeConcentration outside) =>
        VolumeConcentration.FromDecimalFractions(Math.Min(1, (gas + outside).DecimalFractions));

    private static Answer Found(VolumeConcentration closed, VolumeConcentration settled, VolumeFlow needed)
    {
        var worst = Math.Max(closed.PartsPerMillion, settled.PartsPerMillion);
        return new Answer(
            new Result("ppm-closed", Figure.PartsPerMillion(closed)),
            new Result("ppm-ventilated", Figure.PartsPerMillion(settled)),
            new Result("fresh-air-needed", Figure.Air(needed))
        )
            .Finding("room-deadly", Weight.Danger, worst >= RoomAir.Dangerous.PartsPerMillion)
            .Finding("room-over-short-term", Weight.Danger, Lies(RoomAir.ShortTermUs, RoomAir.Dangerous))
            .Finding("room-over-quarter-hour", Weight.Danger, Lies(RoomAir.QuarterHourUk, RoomAir.ShortTermUs))
            .Finding("room-over-limit", Weight.Danger, Lies(RoomAir.EightHours, RoomAir.QuarterHourUk));

        bool Lies(VolumeConcentration from, VolumeConcentration below) =>
            worst >= from.PartsPerMillion && worst < below.PartsPerMillion;
    }
}
