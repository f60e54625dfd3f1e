using BrewFloor.Brewing.Heat;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Heat;

public class BeerFreezingTests
{
    [Theory] // common practice: the worked example of a trade discussion
    [Check("HE-12")]
    public void A_strong_beer_freezes_well_below_zero(Check check) =>
        check.Agrees(BeerFreezing.PointOf(Abw(check.Given("A")), Plato(check.Given("OE"))).Value.DegreesCelsius);

    [Fact] // freezing-point physics gives -2.0 for this beer; copies with the signs turned give -1.0 and warmer
    public void An_ordinary_beer_freezes_near_minus_two() =>
        Assert.InRange(BeerFreezing.PointOf(Abw(4), Plato(12)).Value.DegreesCelsius, -2.45, -1.95);

    [Fact]
    public void What_no_beer_is_is_refused()
    {
        Assert.Equal(
            OutOfRange("alcohol-by-weight", "0", "12", "%"),
            BeerFreezing.PointOf(Abw(12.1), Plato(12)).Refusal
        );
        Assert.Equal(
            OutOfRange("alcohol-by-weight", "0", "12", "%"),
            BeerFreezing.PointOf(Abw(-0.1), Plato(12)).Refusal
        );
        Assert.Equal(
            OutOfRange("original-extract", "0", "30", "°P"),
            BeerFreezing.PointOf(Abw(4), Plato(30.1)).Refusal
        );
        Assert.Equal(
            OutOfRange("original-extract", "0", "30", "°P"),
            BeerFreezing.PointOf(Abw(4), Plato(-0.1)).Refusal
        );
    }
}
