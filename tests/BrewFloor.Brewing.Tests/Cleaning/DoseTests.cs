using BrewFloor.Brewing.Cleaning;
using BrewFloor.Brewing.Tests.Tanks;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Cleaning;

public class DoseTests
{
    private static MassConcentration GramsALitre(double value) => MassConcentration.FromGramsPerLiter(value);

    private static Density KilogramsALitre(double value) => Density.FromKilogramsPerLiter(value);

    private static Outcome<Volume> Peracetic(double ppm, double percent = 5, double density = 1.1, double litres = 1) =>
        Dose.OfConcentrate(
            Litres(litres),
            MassConcentration.FromMilligramsPerLiter(ppm),
            Abw(percent),
            KilogramsALitre(density)
        );

    [Theory]
    [Check("CI-21")]
    public void Peracetic_acid_by_its_active_part(Check check) => check.Agrees(Peracetic(150).Value.Milliliters);

    [Theory]
    [Check("CI-09")]
    public void An_ounce_on_a_gallon(Check check)
    {
        Assert.Equal("7.8125 mL/L", check.Expected);
        Assert.Equal(7.8125, Passivation.AcidSoak.MillilitersPerLiter, 1e-9);
    }

    [Fact]
    public void Powder_goes_by_the_litre_and_stock_by_its_strength()
    {
        Assert.Equal(0.5, Dose.OfPowder(Litres(50), GramsALitre(10)).Value.Kilograms, 1e-12);
        Assert.Equal(2, Dose.OfStock(Litres(50), GramsALitre(20), GramsALitre(500)).Value.Liters, 1e-12);
    }

    [Fact]
    public void A_bath_made_by_weight_has_that_weight() =>
        Gen.Select(Gen.Double[0.1, 1000], Gen.Double[0, 50])
            .Sample(
                (water, percent) =>
                {
                    var acid = Dose.IntoWater(Kg(water), Abw(percent)).Value.Kilograms;
                    Assert.Equal(percent, 100 * acid / (acid + water), 1e-9);
                }
            );

    [Fact]
    public void Twice_the_tank_or_twice_the_strength_takes_twice_the_product() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[1, 1000])
            .Sample(
                (litres, ppm) =>
                {
                    var once = Peracetic(ppm, litres: litres).Value.Liters;
                    Assert.Equal(2 * once, Peracetic(2 * ppm, litres: litres).Value.Liters, 1e-9);
                    Assert.Equal(2 * once, Peracetic(ppm, litres: 2 * litres).Value.Liters, 1e-9);
                }
            );

    [Fact]
    public void A_dose_that_cannot_be_is_refused()
    {
        Assert.Equal("active", Peracetic(-1).Refusal?.What);
        Assert.Equal("concentrate", Peracetic(150, 0).Refusal?.What);
        Assert.Equal("density", Peracetic(150, 5, 0.5).Refusal?.What);
        Assert.Equal("solution", Peracetic(150, litres: -1).Refusal?.What);
        Assert.Equal("strength", Dose.OfPowder(Litres(1), GramsALitre(501)).Refusal?.What);
        Assert.Equal(
            OutOfRange("strength", "0", "10", "g/L"),
            Dose.OfStock(Litres(1), GramsALitre(11), GramsALitre(10)).Refusal
        );
        Assert.Equal("stock", Dose.OfStock(Litres(1), GramsALitre(0), GramsALitre(0)).Refusal?.What);
        Assert.Equal("water", Dose.Of(Litres(1), Litres(0)).Refusal?.What);
        Assert.Equal("product", Dose.Of(Litres(-1), Litres(1)).Refusal?.What);
        Assert.Equal("strength", Dose.IntoWater(Kg(1), Abw(51)).Refusal?.What);
    }

    [Theory]
    [Check("CI-23")]
    public void Running_water_thins_by_the_volume_that_stays(Check check) =>
        check.Agrees(Rinse.Running(Litres(10), GramsALitre(10), GramsALitre(0.1)).Value.Liters);

    [Fact]
    public void Portions_take_less_water_than_a_stream() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[1, 100], Gen.Double[0.001, 0.9])
            .Sample(
                (left, portion, share) =>
                {
                    var times = Rinse.Portions(Litres(left), Litres(portion), GramsALitre(1), GramsALitre(share)).Value;
                    Assert.True(Math.Pow(left / (left + portion), times) <= share * (1 + 1e-6));
                    Assert.True(Math.Pow(left / (left + portion), times - 1) > share * (1 - 1e-6));
                }
            );

    [Fact]
    public void Rinsing_cannot_make_it_stronger()
    {
        Assert.Equal("after", Rinse.Running(Litres(1), GramsALitre(1), GramsALitre(2)).Refusal?.What);
        Assert.Equal("after", Rinse.Running(Litres(1), GramsALitre(1), GramsALitre(0)).Refusal?.What);
        Assert.Equal("held", Rinse.Running(Litres(0), GramsALitre(1), GramsALitre(1)).Refusal?.What);
        Assert.Equal("portion", Rinse.Portions(Litres(1), Litres(0), GramsALitre(1), GramsALitre(1)).Refusal?.What);
    }

    [Fact]
    public void A_charge_covers_the_outlet_or_a_share_of_the_tank()
    {
        var tank = Shapes.Conical; // 89.88 L; 14.48 L in the cone

        var shallow = CipCharge.For(tank, Litres(3), Percent(5), Length.FromMillimeters(50)).Value;
        var deep = CipCharge.For(tank, Litres(3), Percent(5), Length.FromMillimeters(303.11)).Value;

        Assert.Equal(0.05 * 89.88, shallow.Pool.Liters, 0.01);
        Assert.Equal(14.48 + 3, deep.Total.Liters, 0.01);
        Assert.Equal("pool", CipCharge.For(tank, Litres(3), Percent(6), Length.Zero).Refusal?.What);
        Assert.Equal("lines", CipCharge.For(tank, Litres(-1), Percent(5), Length.Zero).Refusal?.What);
        Assert.Equal("level", CipCharge.For(tank, Litres(3), Percent(5), Metres(1)).Refusal?.What);
    }
}
