using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Room;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Room;

public class RoomAirTests
{
    private static Volume Cubic(double metres) => Volume.FromCubicMeters(metres);

    private static VolumeConcentration Ppm(double ppm) => VolumeConcentration.FromPartsPerMillion(ppm);

    private static MassFlow Hourly(double kg) => MassFlow.FromKilogramsPerHour(kg);

    private static VolumeFlow Fresh(double cubic) => VolumeFlow.FromCubicMetersPerHour(cubic);

    [Theory] // Balling and the ideal gas
    [Check("CI-07")]
    public void A_hectolitre_makes_a_closed_room_deadly(Check check)
    {
        var gas = Fermented.From(Litres(100), Plato(12), Plato(4.2)).Value.Formed.CarbonDioxide;
        var volume = RoomAir.VolumeOf(gas, Celsius(20)).Value;
        var air = RoomAir.Closed(gas, Cubic(30), Celsius(20)).Value;

        check.Agrees(gas.Kilograms, volume.CubicMeters, air.PartsPerMillion / 1000);
        Assert.True(air > RoomAir.Dangerous);
    }

    [Theory] // OSHA, ACGIH, NIOSH, HSE
    [Check("CI-06")]
    public void The_limits_of_four_authorities(Check check)
    {
        var (long8, short15, shortUs, deadly) = (
            RoomAir.EightHours.PartsPerMillion,
            RoomAir.QuarterHourUk.PartsPerMillion,
            RoomAir.ShortTermUs.PartsPerMillion,
            RoomAir.Dangerous.PartsPerMillion
        );

        Assert.Equal(
            $"OSHA PEL {long8:F0} ppm 8 h TWA; ACGIH TLV-STEL {shortUs:F0} ppm; NIOSH IDLH {deadly:F0} ppm; UK WEL {long8:F0} ppm 8 h / {short15:F0} ppm 15 min",
            check.Expected
        );
    }

    [Theory] // ideal gas
    [Check("RO-01")]
    public void A_kilogram_an_hour_takes_a_hundred_cubic_metres(Check check) =>
        check.Agrees(RoomAir.FreshAirFor(Hourly(1), Ppm(5000), Celsius(20)).Value.CubicMetersPerHour);

    [Fact]
    public void The_air_for_a_limit_keeps_that_limit() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[100, 50_000])
            .Sample(
                (kg, ppm) =>
                {
                    var fresh = RoomAir.FreshAirFor(Hourly(kg), Ppm(ppm), Celsius(15)).Value;
                    if (fresh.CubicMetersPerHour is >= 1 and <= 1e6)
                    {
                        var settled = RoomAir.Ventilated(Hourly(kg), fresh, Celsius(15)).Value;
                        Assert.Equal(ppm, settled.PartsPerMillion, ppm * 1e-9);
                    }
                }
            );

    [Fact]
    public void More_gas_than_room_is_all_there_is_to_breathe()
    {
        Assert.Equal(1, RoomAir.Closed(Kg(100), Cubic(30), Celsius(20)).Value.DecimalFractions);
        Assert.Equal(1, RoomAir.Ventilated(Hourly(100), Fresh(10), Celsius(20)).Value.DecimalFractions);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal("room", RoomAir.Closed(Kg(1), Cubic(0), Celsius(20)).Refusal?.What);
        Assert.Equal("temperature", RoomAir.Closed(Kg(1), Cubic(30), Celsius(60)).Refusal?.What);
        Assert.Equal("released", RoomAir.Ventilated(Hourly(-1), Fresh(100), Celsius(20)).Refusal?.What);
        Assert.Equal("fresh-air", RoomAir.Ventilated(Hourly(1), Fresh(0), Celsius(20)).Refusal?.What);
        Assert.Equal("limit", RoomAir.FreshAirFor(Hourly(1), Ppm(1), Celsius(20)).Refusal?.What);
    }
}
