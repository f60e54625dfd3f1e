using BrewFloor.Brewing.Carbonation;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class CarbonDioxideSolubilityTests
{
    private static double Beer(double celsius, double bar) =>
        CarbonDioxideSolubility.InBeer(Celsius(celsius), Pressure.FromBars(bar)).Value.GramsPerLiter;

    [Theory] // Liger-Belair & Cilindre 2021, PMC8047704, Table 1: about 2.4 in a lager
    [Check("CO-11")]
    public void A_lager_holds_about_what_was_published(Check check) => check.Agrees(Beer(6, 1), Beer(6, 1));

    [Theory] // Carroll, Slupsky, Mather 1991
    [Check("CO-13")]
    public void Water_holds_what_was_published(Check check) =>
        check.Agrees(CarbonDioxideSolubility.InWater(Celsius(10), Pressure.FromBars(1)).Value.GramsPerLiter);

    [Theory] // Sander 2015 and 2023
    [Check("CO-12")]
    public void A_second_opinion_on_water(Check check)
    {
        var sander = CarbonDioxideSolubility.InWaterBySander(Celsius(25), Pressure.FromBars(1)).Value;
        var ours = CarbonDioxideSolubility.InWater(Celsius(25), Pressure.FromBars(1)).Value;

        check.Agrees(sander.GramsPerLiter);
        Assert.InRange(ours / sander, 0.99, 1.01);
        Assert.Equal(
            OutOfRange("temperature", "15", "35", "°C"),
            CarbonDioxideSolubility.InWaterBySander(Celsius(0), Pressure.FromBars(1)).Refusal
        );
    }

    [Fact] // IAPWS G7-04: Henry's constant per mole fraction, MPa; the correlations differ by 3 %
    public void Water_holds_what_the_steam_tables_say() =>
        Assert.All(
            Table.Read("henry-iapws-g7-04.csv"),
            row =>
            {
                var theirs = 0.1 / row[1] * 998 / 18.01528 * 44.0095;
                var ours = CarbonDioxideSolubility.InWater(Celsius(row[0]), Pressure.FromBars(1)).Value.GramsPerLiter;
                Assert.InRange(ours / theirs, 0.97, 1.035);
            }
        );

    [Theory] // Carroll et al. 1991, Kell 1975, 0.94 of it in beer
    [Check("CO-15")]
    public void A_vented_beer_keeps_its_residual_gas(Check check) =>
        check.Agrees(Beer(20, 1.01325), Beer(20, 1.01325) / CarbonDioxideContent.PerVolume.GramsPerLiter);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(40.1)]
    public void Ice_and_heat_are_refused(double celsius) =>
        Assert.Equal(
            OutOfRange("temperature", "0", "40", "°C"),
            CarbonDioxideSolubility.InBeer(Celsius(celsius), Pressure.FromBars(1)).Refusal
        );

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1000.1)]
    public void Vacuum_below_nothing_and_pressure_beyond_the_law_are_refused(double kpa) =>
        Assert.Equal(
            OutOfRange("pressure-absolute", "0", "1000", "kPa"),
            CarbonDioxideSolubility.InWater(Celsius(10), Pressure.FromKilopascals(kpa)).Refusal
        );
}
