using BrewFloor.Brewing.Carbonation;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class AtmosphereTests
{
    [Theory] // US Standard Atmosphere
    [Check("CO-20")]
    public void Air_is_thinner_in_the_mountains(Check check) =>
        check.Agrees(Atmosphere.At(Length.FromMeters(1500)).Value.Pascals);

    [Fact]
    public void At_the_sea_it_is_one_atmosphere() =>
        Assert.Equal(101.325, Atmosphere.At(Length.Zero).Value.Kilopascals, 1e-9);

    [Theory]
    [InlineData(-501)]
    [InlineData(5001)]
    public void Where_nobody_brews_is_refused(double metres) =>
        Assert.Equal(OutOfRange("altitude", "-500", "5000", "m"), Atmosphere.At(Length.FromMeters(metres)).Refusal);
}
