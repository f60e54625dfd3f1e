using BrewFloor.Brewing.Cleaning;
using BrewFloor.Brewing.Tanks;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Cleaning;

public class HazardTests
{
    private static Outcome<CausticVacuum> Caustic(double percent = 95, double litres = 100, double bar = 1.01325) =>
        Vacuum.ByCaustic(Litres(litres), Percent(percent), Bar(bar), Celsius(20));

    [Theory] // ideal gas and Buck's vapour
    [Check("CI-03")]
    public void Caustic_eats_the_gas_a_tank_stands_on(Check check) => check.Agrees(Caustic().Value.Left.Bars);

    [Theory] // 2 NaOH + CO2
    [Check("CI-04")]
    public void And_the_gas_eats_the_caustic(Check check)
    {
        var spent = Caustic().Value;

        check.Agrees(spent.CarbonDioxide.Grams, spent.Caustic.Grams);
    }

    [Theory] // ideal gas and Buck's vapour
    [Check("CI-05")]
    public void Hot_then_cold_is_half_a_vacuum(Check check) =>
        check.Agrees(Vacuum.ByCooling(Celsius(80), Celsius(20), Bar(1.01325)).Value.Bars);

    [Fact]
    public void The_colder_and_the_more_gas_the_deeper() =>
        Gen.Select(Gen.Double[1, 89], Gen.Double[0.01, 1], Gen.Double[0, 99])
            .Sample(
                (hot, share, percent) =>
                {
                    var cool = Vacuum.ByCooling(Celsius(hot), Celsius(hot * share), Bar(1.01325)).Value;
                    var colder = Vacuum.ByCooling(Celsius(hot), Celsius(hot * share * 0.9), Bar(1.01325)).Value;
                    Assert.True(colder < cool && cool.Bars <= 1.01325 + 1e-12);
                    Assert.True(Caustic(percent + 1).Value.Left < Caustic(percent).Value.Left);
                }
            );

    [Fact]
    public void A_vacuum_that_cannot_be_is_refused()
    {
        Assert.Equal("carbon-dioxide", Caustic(101).Refusal?.What);
        Assert.Equal("gas-space", Caustic(litres: 0).Refusal?.What);
        Assert.Equal("pressure-absolute", Caustic(bar: 0.01).Refusal?.What);
        Assert.Equal("hot", Vacuum.ByCooling(Celsius(96), Celsius(20), Bar(1)).Refusal?.What);
        Assert.Equal("cold", Vacuum.ByCooling(Celsius(80), Celsius(81), Bar(1)).Refusal?.What);
        Assert.Equal("pressure-absolute", Vacuum.ByCooling(Celsius(80), Celsius(20), Bar(0.05)).Refusal?.What);
    }

    [Fact] // water boils at 75.9 °C under 0.4 bar (steam tables, from memory)
    public void Hotter_than_water_boils_there_is_no_air_to_reckon_with()
    {
        var refusal = Vacuum.ByCooling(Celsius(80), Celsius(20), Bar(0.4)).Refusal!;

        Assert.Equal("hot", refusal.What);
        Assert.InRange(double.Parse(refusal.To, System.Globalization.CultureInfo.InvariantCulture), 75.6, 76.1);
    }

    [Theory] // Del Vecchio et al. 1951, from memory
    [Check("CI-08")]
    public void A_quarter_of_an_hour_at_sixty_five(Check check) =>
        check.Agrees(HeatKill.Units(TimeSpan.FromMinutes(15), Celsius(65)).Value.Minutes);

    [Fact]
    public void The_time_for_units_gives_those_units() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[58, 85])
            .Sample(
                (units, celsius) =>
                {
                    var held = HeatKill.TimeFor(Duration.FromMinutes(units), Celsius(celsius)).Value.ToTimeSpan();
                    Assert.Equal(units, HeatKill.Units(held, Celsius(celsius)).Value.Minutes, 1e-3);
                }
            );

    [Fact]
    public void Cold_kills_nothing()
    {
        Assert.Equal("temperature", HeatKill.Units(TimeSpan.FromMinutes(1), Celsius(49)).Refusal?.What);
        Assert.Equal("held", HeatKill.Units(TimeSpan.FromHours(25), Celsius(65)).Refusal?.What);
        Assert.Equal("units", HeatKill.TimeFor(Duration.FromMinutes(-1), Celsius(65)).Refusal?.What);
    }

    [Theory] // Directive 2014/68/EU
    [Check("CI-10")]
    public void European_law_looks_from_half_a_bar(Check check)
    {
        Assert.Equal(FormattableString.Invariant($"PS > {PressureDirective.From.Bars} bar gauge"), check.Input);
        Assert.True(PressureDirective.Covers(Bar(0.51)).Value);
        Assert.False(PressureDirective.Covers(Bar(0.5)).Value);
        Assert.Equal("pressure-gauge", PressureDirective.Covers(Bar(-1)).Refusal?.What);
    }

    [Theory] // Nickel Institute 11003
    [Check("PA-04")]
    public void Chloride_by_steel(Check check)
    {
        Assert.StartsWith("304: 100-200 ppm Cl-; 316: 1000 ppm", check.Expected, StringComparison.Ordinal);
        Assert.Equal((100, 200), Ppm(SteelGrade.Grade304));
        Assert.Equal((1000, 1000), Ppm(SteelGrade.Grade316));
        Assert.True(ChlorideLimits.Bears(Mg(99), SteelGrade.Grade304).Value);
        Assert.False(ChlorideLimits.Bears(Mg(100), SteelGrade.Grade304).Value);
        Assert.Equal("chloride", ChlorideLimits.Bears(Mg(-1), SteelGrade.Grade304).Refusal?.What);

        static (double, double) Ppm(SteelGrade grade) =>
            (
                ChlorideLimits.ChlorideCareful(grade).MilligramsPerLiter,
                ChlorideLimits.ChlorideMost(grade).MilligramsPerLiter
            );
    }

    [Theory] // BSSA
    [Check("PA-05")]
    public void Chlorine_for_a_day_at_most(Check check)
    {
        var (from, to) = (ChlorideLimits.ChlorineLeast, ChlorideLimits.ChlorineMost);

        Assert.Equal(
            $"{from.MilligramsPerLiter}-{to.MilligramsPerLiter} ppm, {ChlorideLimits.ChlorineLongest.TotalHours} h maximum",
            check.Expected
        );
    }

    [Theory] // ASTM A967 as summarised by processors
    [Check("PA-01")]
    public void A_citric_bath_by_weight(Check check)
    {
        Assert.StartsWith(
            $"{Passivation.Weakest.Percent}-{Passivation.Strongest.Percent} % w/w",
            check.Expected,
            StringComparison.Ordinal
        );
        Assert.Equal(99.8204 / 19, Passivation.AcidFor(Litres(100), Abw(5)).Value.Kilograms, 1e-9);
        Assert.Equal(OutOfRange("strength", "4", "10", "%"), Passivation.AcidFor(Litres(100), Abw(3)).Refusal);
        Assert.Equal("water", Passivation.AcidFor(Litres(-1), Abw(5)).Refusal?.What);
    }

    [Theory] // ASTM A967, from memory
    [Check("PA-11")]
    public void The_hotter_the_shorter(Check check)
    {
        check.Agrees([
            .. Passivation.Citric.Select(t => t.Coldest.DegreesCelsius),
            .. Passivation.Citric.Select(t => t.Shortest.TotalMinutes),
        ]);
        Assert.Equal("Citric 2", Passivation.At(Celsius(50)).Value.Name);
        Assert.Equal("Citric 1", Passivation.At(Celsius(71)).Value.Name);
        Assert.Equal(OutOfRange("bath-temperature", "21", "71", "°C"), Passivation.At(Celsius(20)).Refusal);
    }

    [Theory] // ASTM A380 7.3.4
    [Check("PA-02")]
    public void Ferroxyl_turns_blue(Check check)
    {
        var parts = IronTest.Ferroxyl.Select(p => p.Percent).ToArray();

        Assert.StartsWith(
            $"water {parts[0]} / nitric acid {parts[1]} / potassium ferricyanide {parts[2]} weight %; blue within {IronTest.FerroxylWithin.TotalSeconds} s",
            check.Expected,
            StringComparison.Ordinal
        );
    }

    [Theory] // MIL-STD-753C
    [Check("PA-03")]
    public void Copper_plates_iron(Check check)
    {
        Assert.Contains($"{IronTest.CopperSulfate.Grams} g CuSO4 in 500 mL", check.Input, StringComparison.Ordinal);
        Assert.Contains($"wet {IronTest.CopperSulfateWet.TotalMinutes} min", check.Input, StringComparison.Ordinal);
    }

    private static MassConcentration Mg(double ppm) => MassConcentration.FromMilligramsPerLiter(ppm);
}
