using BrewFloor.Brewing.Extract;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class WaterDensityTests
{
    private static double At(double celsius) => WaterDensity.At(Celsius(celsius)).Value.KilogramsPerCubicMeter;

    [Theory] // Kell 1975; a reprint with swapped digits would give 996.6
    [Check("VO-04")]
    public void Agrees_with_Kell(Check check) => check.Agrees(At(25));

    [Theory] // Kell 1975
    [Check("VO-03")]
    public void Water_shrinks_when_it_is_crashed(Check check) => check.Agrees(100 * (1 - (At(20) / At(1))));

    [Theory] // IAPWS-95; the two differ by 0.003 below 40 °C, 0.008 at 80 °C
    [InlineData(0, 999.843, 0.004)]
    [InlineData(4, 999.975, 0.004)]
    [InlineData(60, 983.196, 0.004)]
    [InlineData(80, 971.790, 0.009)]
    public void Agrees_with_the_international_formulation(double celsius, double density, double room) =>
        Assert.Equal(density, At(celsius), room);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(150.1)]
    public void Ice_and_steam_are_refused(double celsius) =>
        Assert.Equal(OutOfRange("temperature", "0", "150", "°C"), WaterDensity.At(Celsius(celsius)).Refusal);
}
