using BrewFloor.Brewing.Extract;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class BallingTests
{
    [Theory] // Balling's balance, as quoted by Nielsen et al. 2007 and Speers 2015
    [Check("EX-10")]
    public void Original_extract_comes_from_alcohol_and_real_extract(Check check) =>
        check.Agrees(Balling.OriginalExtract(Abw(check.Given("A")), Plato(check.Given("RE"))).Value.Value);

    [Theory] // algebraic inverse
    [Check("EX-11")]
    public void Alcohol_comes_from_original_and_real_extract(Check check) =>
        check.Agrees(Balling.Alcohol(Plato(check.Given("OE")), Plato(check.Given("RE"))).Value.Percent);

    [Theory] // ASBC Beer-6 as quoted by Speers 2015
    [Check("EX-15")]
    public void Apparent_degree_of_fermentation(Check check) =>
        check.Agrees(Balling.ApparentDegree(Plato(check.Given("OE")), Plato(check.Given("AE"))).Value.Percent);

    [Theory] // ASBC Beer-6 as quoted by Speers 2015
    [Check("EX-16")]
    public void Real_degree_of_fermentation(Check check) =>
        check.Agrees(Balling.RealDegree(Plato(check.Given("OE")), Plato(check.Given("RE"))).Value.Percent);

    [Theory] // 2.0665 = 1 + 0.9565 + 0.11
    [Check("EX-19")]
    public void A_kilogram_of_extract_becomes_gas_alcohol_and_yeast(Check check)
    {
        var yield = Balling.YieldOf(Mass.FromKilograms(1));

        check.Agrees(yield.CarbonDioxide.Kilograms, yield.Ethanol.Kilograms, yield.DryYeast.Kilograms);
    }

    [Fact]
    public void Nothing_is_lost_in_the_balance() =>
        Gen.Double[0, 1e4]
            .Sample(kg =>
            {
                var yield = Balling.YieldOf(Mass.FromKilograms(kg));
                Assert.Equal(kg, (yield.CarbonDioxide + yield.Ethanol + yield.DryYeast).Kilograms, 1e-9 * (1 + kg));
            });

    [Fact]
    public void Less_extract_than_nothing_is_a_bug() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Balling.YieldOf(Mass.FromKilograms(-1)));

    [Fact]
    public void Original_extract_from_its_own_alcohol_and_back_loses_nothing() =>
        Gen.Select(Gen.Double[1, 30], Gen.Double[0, 1])
            .Sample(
                (original, share) =>
                {
                    var real = Plato(original * share);
                    var alcohol = Balling.Alcohol(Plato(original), real).Value;
                    Assert.Equal(original, Balling.OriginalExtract(alcohol, real).Value.Value, 1e-9);
                }
            );

    [Fact]
    public void Unfermented_wort_has_no_alcohol()
    {
        Assert.Equal(0, Balling.Alcohol(Plato(12), Plato(12)).Value.Percent);
        Assert.Equal(0, Balling.ApparentDegree(Plato(12), Plato(12)).Value.Percent);
    }

    [Theory]
    [InlineData(0.99)]
    [InlineData(40.01)]
    [InlineData(double.NaN)]
    public void Original_extract_is_one_to_forty(double original)
    {
        var refusal = OutOfRange("original-extract", "1", "40", "°P");

        Assert.Equal(refusal, Balling.Alcohol(Plato(original), Plato(0.5)).Refusal);
        Assert.Equal(refusal, Balling.RealExtract(Plato(original), Plato(0.5)).Refusal);
        Assert.Equal(refusal, Balling.ApparentDegree(Plato(original), Plato(0.5)).Refusal);
        Assert.Equal(refusal, Balling.RealDegree(Plato(original), Plato(0.5)).Refusal);
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(12.01)]
    public void Real_extract_is_between_nothing_and_the_original(double real)
    {
        var refusal = OutOfRange("real-extract", "0", "12", "°P");

        Assert.Equal(refusal, Balling.Alcohol(Plato(12), Plato(real)).Refusal);
        Assert.Equal(refusal, Balling.RealDegree(Plato(12), Plato(real)).Refusal);
    }

    [Theory]
    [InlineData(-1.32)]
    [InlineData(12.01)] // sugar was added, or one of the two was misread
    public void Apparent_extract_above_the_original_is_refused(double apparent)
    {
        var refusal = OutOfRange("apparent-extract", "-1.31", "12", "°P");

        Assert.Equal(refusal, Balling.RealExtract(Plato(12), Plato(apparent)).Refusal);
        Assert.Equal(refusal, Balling.ApparentDegree(Plato(12), Plato(apparent)).Refusal);
        Assert.Equal(refusal, EmpiricalAlcohol.From(Plato(12), Plato(apparent)).Refusal);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(20.1)]
    public void Alcohol_that_no_yeast_makes_is_refused(double percent)
    {
        var refusal = OutOfRange("alcohol-by-weight", "0", "20", "%");

        Assert.Equal(refusal, Balling.OriginalExtract(Abw(percent), Plato(4)).Refusal);
        Assert.Equal(refusal, Balling.AlcoholByVolume(Abw(percent), Sg(1.01)).Refusal);
        Assert.Equal(refusal, Tabarie.Gravity(Plato(4), Abw(percent)).Refusal);
    }
}
