using BrewFloor.Brewing.Carbonation;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class CylinderTests
{
    private static readonly FlatTank Tank = new(Litres(90), Litres(10), Celsius(4), Sea);

    private static Outcome<Mass> Gives(double gross, double tare = 10, double bar = 3, double celsius = 20) =>
        new Cylinder(Kg(gross), Kg(tare), Litres(13)).StillGives(Celsius(celsius), Bar(bar));

    [Fact] // mass balance by hand: (2.5 · 1.9635 - 1.0) g/L · 90 L
    public void A_tank_takes_the_difference()
    {
        var plan = ForcedCarbonation.Plan(Tank, CarbonDioxideContent.OfGramsPerLitre(1).Value, Vol(2.5)).Value;

        Assert.Equal(0.35179, plan.IntoBeer.Kilograms, 0.00001);
        Assert.Equal(Equilibrium.GaugeFor(Vol(2.5), Celsius(4), Sea).Value, plan.Gauge);
        Assert.Equal(
            SealedCrash
                .ToHold(new(Litres(0), Litres(10), Celsius(4), Bar(1.01325)), Celsius(4), plan.Gauge + Bar(1.01325))
                .Value.Kilograms,
            plan.IntoHeadspace.Kilograms,
            1e-9
        );
    }

    [Fact]
    public void Livelier_takes_more_gas_and_more_pressure() =>
        Gen.Select(Gen.Double[1.4, 4], Gen.Double[0.01, 1])
            .Sample(
                (volumes, more) =>
                {
                    var less = ForcedCarbonation.Plan(Tank, Vol(1), Vol(volumes)).Value;
                    var plan = ForcedCarbonation.Plan(Tank, Vol(1), Vol(volumes + more)).Value;
                    Assert.True(plan.IntoBeer > less.IntoBeer && plan.Gauge > less.Gauge);
                }
            );

    [Fact]
    public void A_beer_cannot_be_made_flatter_this_way()
    {
        Assert.Equal(
            OutOfRange("carbonation", "2.6", "15", "vol"),
            ForcedCarbonation.Plan(Tank, Vol(2.6), Vol(2.5)).Refusal
        );
        Assert.Equal("carbonation", ForcedCarbonation.Plan(Tank, Vol(0), Vol(1)).Refusal?.What);
        Assert.Equal("beer", ForcedCarbonation.Plan(Tank with { Beer = Litres(-1) }, Vol(0), Vol(2)).Refusal?.What);
        Assert.Equal(
            "headspace",
            ForcedCarbonation.Plan(Tank with { Headspace = Litres(-1) }, Vol(0), Vol(2)).Refusal?.What
        );
    }

    [Fact] // ideal gas by hand: 13 L · 4.01325 bar · 100 · 44.0095 / (8.314462618 · 293.15) = 94.2 g stay
    public void What_stays_in_the_cylinder_is_gas() => Assert.Equal(5 - 0.0942, Gives(15).Value.Kilograms, 0.0001);

    [Fact]
    public void A_cylinder_gives_no_more_than_it_holds_and_never_less_than_nothing() =>
        Gen.Select(Gen.Double[0, 40], Gen.Double[0, 30])
            .Sample((net, bar) => Assert.InRange(Gives(10 + net, bar: bar).Value.Kilograms, 0, net));

    [Fact]
    public void Whole_uses_are_counted()
    {
        Assert.Equal(3, Cylinder.Uses(Kg(3), Kg(1)).Value);
        Assert.Equal(2, Cylinder.Uses(Kg(2.99), Kg(1)).Value);
        Assert.Equal(OutOfRange("each", "0.001", "1000", "kg"), Cylinder.Uses(Kg(3), Kg(0)).Refusal);
    }

    [Fact]
    public void A_cylinder_lighter_than_empty_is_refused()
    {
        Assert.Equal(OutOfRange("gross", "10", "2000", "kg"), Gives(9).Refusal);
        Assert.Equal("tare", Gives(9, -1).Refusal?.What);
        Assert.Equal("pressure-gauge", Gives(15, bar: 31).Refusal?.What);
        Assert.Equal("temperature", Gives(15, celsius: 51).Refusal?.What);
    }
}
