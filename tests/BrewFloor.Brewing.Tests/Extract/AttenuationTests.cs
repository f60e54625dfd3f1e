using BrewFloor.Brewing.Extract;
using CsCheck;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class AttenuationTests
{
    private static Attenuation Of(Check check, AttenuationQuotient quotient) =>
        Attenuation.From(Plato(check.Given("OE")), Plato(check.Given("AE")), quotient).Value;

    private static void Agrees(Check check, Attenuation beer) =>
        check.Agrees(beer.Real.Value, beer.AlcoholByWeight.Percent, beer.AlcoholByVolume.Percent);

    [Theory] // MEBAK's factor 0.81
    [Check("EX-12")]
    public void Alcohol_by_the_usual_quotient(Check check) => Agrees(check, Of(check, AttenuationQuotient.Mebak));

    [Theory] // Balling's own quotient
    [Check("EX-13")]
    public void Alcohol_by_the_classical_quotient(Check check) =>
        Agrees(check, Of(check, AttenuationQuotient.Classical));

    [Theory] // Cutaia, Reid, Speers 2009, Table VI
    [Check("EX-14")]
    public void Alcohol_as_real_brews_had_it(Check check) =>
        check.Agrees(EmpiricalAlcohol.From(Plato(check.Given("OE")), Plato(check.Given("AE"))).Value.Percent);

    [Theory] // Cutaia, Reid, Speers 2009, Table III
    [Check("EX-24", "EX-25")]
    public void The_usual_quotient_agrees_with_the_means_of_real_brews(Check check) =>
        check.Agrees(Of(check, AttenuationQuotient.Mebak).AlcoholByWeight.Percent);

    [Theory] // Cutaia, Reid, Speers 2009, Table III
    [Check("EX-26")]
    public void The_quotient_of_real_brews(Check check) =>
        check.Agrees(
            AttenuationQuotient
                .From(Plato(check.Given("OE")), Plato(check.Given("RE")), Plato(check.Given("AE")))
                .Value.Value
        );

    [Theory] // Tabarié's principle, OIML R22 and the sucrose table
    [Check("EX-17")]
    public void Physics_gives_the_usual_quotient(Check check)
    {
        var (real, alcohol) = (Plato(check.Given("RE")), Abw(check.Given("A")));
        var apparent = DegreesPlato.From(Tabarie.Gravity(real, alcohol).Value).Value;
        var original = Balling.OriginalExtract(alcohol, real).Value;

        check.Agrees(apparent.Value, AttenuationQuotient.From(original, real, apparent).Value.Value);
    }

    [Fact]
    public void Without_alcohol_the_gravity_is_that_of_the_extract() =>
        Gen.Double[0, 40]
            .Sample(p => Assert.Equal(Plato(p).ToGravity().Value, Tabarie.Gravity(Plato(p), Abw(0)).Value));

    [Theory] // EU Directive 76/766, OIML R22
    [Check("EX-18")]
    public void Pure_ethanol_weighs_what_the_directive_says(Check check) =>
        check.Agrees(EthanolDensity.At20(Abw(100 * check.Given("p"))).Value.KilogramsPerCubicMeter);

    [Theory] // EU Directive 76/766, OIML R22, the same formula summed elsewhere
    [Check("EX-32")]
    public void Beer_strength_spirit_weighs_what_the_directive_says(Check check) =>
        check.Agrees(
            EthanolDensity.At20(Abw(4)).Value.KilogramsPerCubicMeter,
            EthanolDensity.At20(Abw(5)).Value.KilogramsPerCubicMeter,
            EthanolDensity.At20(Abw(10)).Value.KilogramsPerCubicMeter
        );

    [Theory] // MEBAK
    [Check("EX-31")]
    public void The_quotient_is_mebaks_unless_somebody_chooses(Check check)
    {
        check.Agrees(default(AttenuationQuotient).Value);
        Assert.Equal(AttenuationQuotient.Mebak, default);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(100.1)]
    public void More_than_pure_is_refused(double percent) =>
        Assert.Equal(OutOfRange("alcohol-by-weight", "0", "100", "%"), EthanolDensity.At20(Abw(percent)).Refusal);

    [Fact]
    public void From_gravities_it_says_the_same_as_from_extracts()
    {
        var (original, present) = (Sg(1.048), Sg(1.010));

        Assert.Equal(
            Attenuation.From(DegreesPlato.From(original).Value, DegreesPlato.From(present).Value).Value,
            Attenuation.From(original, present).Value
        );
    }

    [Fact]
    public void The_error_is_a_tenth_at_five_percent()
    {
        var beer = Attenuation.From(Plato(12), Plato(2.5)).Value;

        Assert.Equal(0.1, beer.PlusMinus.Percent, 0.005);
    }

    [Fact]
    public void A_gravity_above_the_original_is_refused() =>
        Assert.Equal("apparent-extract", Attenuation.From(Sg(1.048), Sg(1.049)).Refusal?.What);

    [Fact]
    public void A_gravity_outside_the_table_is_refused() =>
        Assert.Equal(OutOfRange("gravity", "0.995", "1.179"), Attenuation.From(Sg(1.048), Sg(0.994)).Refusal);

    [Fact]
    public void The_further_it_ferments_the_stronger_it_is() =>
        Gen.Select(Gen.Double[4, 30], Gen.Double[0, 1], Gen.Double[0, 1])
            .Where((_, a, b) => Math.Abs(a - b) > 1e-3)
            .Sample(
                (original, a, b) =>
                {
                    var further = Attenuation.From(Plato(original), Plato(original * Math.Min(a, b))).Value;
                    var less = Attenuation.From(Plato(original), Plato(original * Math.Max(a, b))).Value;
                    Assert.True(further.AlcoholByVolume > less.AlcoholByVolume);
                    Assert.True(further.RealDegree > less.RealDegree);
                }
            );

    [Theory]
    [InlineData(0.779, false)]
    [InlineData(0.78, true)]
    [InlineData(0.84, true)]
    [InlineData(0.841, false)]
    [InlineData(double.NaN, false)]
    public void A_quotient_that_no_beer_has_is_refused(double quotient, bool accepted) =>
        Assert.Equal(
            accepted ? null : OutOfRange("attenuation-quotient", "0.78", "0.84"),
            AttenuationQuotient.Of(quotient).Refusal
        );
}
