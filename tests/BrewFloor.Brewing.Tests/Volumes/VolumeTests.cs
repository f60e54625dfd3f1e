using BrewFloor.Brewing.Volumes;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;

namespace BrewFloor.Brewing.Tests.Volumes;

public class VolumeTests
{
    private static readonly MonthlySummary May = new(
        Litres(1000),
        Litres(500),
        Litres(20),
        Litres(700),
        Litres(15),
        Litres(800)
    );

    [Theory] // 27 CFR 25.11, NIST SP 811
    [Check("VO-01")]
    public void A_us_beer_barrel(Check check) => check.Agrees(Volume.FromUsBeerBarrels(1).Liters);

    [Theory] // NIST SP 811
    [Check("VO-02")]
    public void A_pound_on_a_barrel(Check check)
    {
        var grams = (Mass.FromPounds(1) / Volume.FromUsBeerBarrels(1)).KilogramsPerCubicMeter;

        (check with { Tolerance = "+-0.0005; +-0.05" }).Agrees(grams, 100 * grams);
    }

    [Theory] // NIST SP 811
    [Check("VO-05")]
    public void A_pound_on_a_square_inch(Check check) =>
        check.Agrees(Pressure.FromPoundsForcePerSquareInch(1).Kilopascals);

    [Theory] // NIST SP 811, 27 CFR 25.11
    [Check("VO-11")]
    public void Gallons_and_barrels_and_ounces(Check check) =>
        check.Agrees(
            Volume.FromUsGallons(1).Liters,
            Volume.FromImperialGallons(1).Liters,
            36 * Volume.FromImperialGallons(1).Liters,
            Volume.FromUsOunces(1).Milliliters,
            Volume.FromHectoliters(1).UsBeerBarrels
        );

    [Fact]
    public void Kegs_and_rest_and_loss_are_the_beer() =>
        Gen.Select(Gen.Double[0, 10_000], Gen.Double[5, 60], Gen.Double[0, 50])
            .Sample(
                (beer, keg, loss) =>
                {
                    var kegs = Kegs.Filled(Litres(beer), Litres(keg), Percent(loss)).Value;
                    var all = (kegs.Full * keg) + kegs.Rest.Liters + kegs.Lost.Liters;
                    Assert.Equal(beer, all, 1e-6);
                    Assert.InRange(kegs.Rest.Liters, 0, keg);
                }
            );

    [Fact]
    public void Five_kegs_are_five_kegs() => // 100 / 20 isn't 4.999
        Assert.Equal(5, Kegs.Filled(Litres(100), Litres(20), Percent(0)).Value.Full);

    [Fact]
    public void Kegs_that_cannot_be_are_refused()
    {
        Assert.Equal("keg", Kegs.Filled(Litres(100), Litres(0), Percent(0)).Refusal?.What);
        Assert.Equal("beer", Kegs.Filled(Litres(-1), Litres(20), Percent(0)).Refusal?.What);
        Assert.Equal("loss", Kegs.Filled(Litres(100), Litres(20), Percent(51)).Refusal?.What);
    }

    [Fact]
    public void What_should_be_there_and_what_is()
    {
        Assert.Equal(805, May.Expected.Liters, 1e-9);
        Assert.Equal(-5, May.Difference.Liters, 1e-9); // a shortage
    }

    [Theory] // TTB F 5130.9
    [Check("TT-01")]
    public void The_next_month_opens_with_what_this_one_closed(Check check)
    {
        Assert.Equal(
            $"due {MonthlySummary.UsDueDay}th day after period; quarterly if liability <= {MonthlySummary.UsQuarterlyUpTo} USD; barrels to {MonthlySummary.UsDecimals} decimals; line 1 = previous line 33",
            check.Expected
        );
        Assert.True(May.Next().Continues(May));
        Assert.False(May.Continues(May));
        Assert.Equal(0, May.Next().Difference.Liters, 1e-9);
        Assert.Equal(8.52m, MonthlySummary.UsBarrels(Litres(1000)));
    }
}
