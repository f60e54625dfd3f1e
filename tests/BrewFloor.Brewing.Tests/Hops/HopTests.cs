using BrewFloor.Brewing.Hops;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Hops;

public class HopTests
{
    private static HopCreep Worst(double days) => HopCreep.Worst(TimeSpan.FromDays(days)).Value;

    private static Outcome<DryHop> Dose(double litres, double grams) =>
        DryHop.For(Litres(litres), MassConcentration.FromGramsPerLiter(grams));

    [Theory] // Kirkpatrick & Shellhammer 2018
    [Check("KI-06")]
    public void The_worst_case_is_the_published_one(Check check) =>
        (check with { Tolerance = "+-0.02; +-0.02; +-0.1; +-0.1" }).Agrees(
            -Worst(5).RealFall.Value,
            -Worst(40).RealFall.Value,
            Worst(40).Gas.Volumes,
            Worst(40).Alcohol.Percent
        );

    [Theory] // Balling
    [Check("KI-07")]
    public void Two_degrees_are_nearly_five_volumes(Check check)
    {
        var creep = HopCreep.From(Plato(2)).Value;

        check.Agrees(creep.Gas.Volumes, creep.Alcohol.Percent);
    }

    [Fact]
    public void Creep_only_goes_on() =>
        Gen.Select(Gen.Double[0, 30], Gen.Double[0.1, 30])
            .Sample((days, more) => Worst(days + more).RealFall > Worst(days).RealFall);

    [Theory] // Hauser, Lafontaine, Shellhammer 2019
    [Check("DH-01")]
    public void Most_of_the_hop_stays_in_the_hop(Check check)
    {
        Assert.Equal(1.0 / 3, DryHop.Extracted.DecimalFractions, 1e-12);
        Assert.Equal(
            $"about 1/3 of dry matter extracted; {DryHop.AlphaKept.Percent} % alpha acids and {DryHop.OilKept.Percent} % oil stay in the hops",
            check.Expected
        );
    }

    [Theory] // the same
    [Check("DH-02")]
    public void In_industry_less_stays(Check check) =>
        check.Agrees(DryHop.KeptInIndustry.Alpha.Percent, DryHop.KeptInIndustry.Oil.Percent);

    [Theory] // common practice
    [Check("DH-03")]
    public void A_kilogram_keeps_six_litres(Check check)
    {
        var hop = Dose(100, 10).Value;

        Assert.Equal(1, hop.Pellets.Kilograms, 1e-12);
        check.Agrees(hop.Loss.Liters, hop.LossLow.Liters, hop.LossHigh.Liters);
    }

    [Fact]
    public void Twice_the_beer_takes_twice_the_hops() =>
        Gen.Select(Gen.Double[0, 1000], Gen.Double[0, 40])
            .Sample(
                (litres, grams) =>
                {
                    var (one, two) = (Dose(litres, grams).Value, Dose(2 * litres, grams).Value);
                    Assert.Equal(2 * one.Loss.Liters, two.Loss.Liters, 1e-9);
                    Assert.Equal(2 * one.Pellets.Grams, two.Pellets.Grams, 1e-6);
                }
            );

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal("dose", Dose(1, 41).Refusal?.What);
        Assert.Equal("beer", Dose(-1, 4).Refusal?.What);
        Assert.Equal(OutOfRange("contact", "0", "60", "d"), HopCreep.Worst(TimeSpan.FromDays(61)).Refusal);
        Assert.Equal("real-extract", HopCreep.From(Plato(-1)).Refusal?.What);
        Assert.Equal(8, DryHop.Enough.GramsPerLiter);
    }
}
