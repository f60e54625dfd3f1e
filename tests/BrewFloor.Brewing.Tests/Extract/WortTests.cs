using BrewFloor.Brewing.Extract;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class WortTests
{
    private static Volume Litres(double litres) => Volume.FromLiters(litres);

    [Theory] // the definition of °P
    [Check("EX-33")]
    public void A_litre_of_wort_weighs_and_holds_what_its_gravity_says(Check check) =>
        check.Agrees(
            Wort.MassOf(Litres(1000), Sg(1.04836)).Value.Kilograms,
            Wort.ExtractPerVolume(Sg(1.04836)).Value.GramsPerLiter
        );

    [Fact]
    public void Twice_the_wort_holds_twice_the_extract() =>
        Gen.Select(Gen.Double[0, 10_000], Gen.Double[1, 1.179])
            .Sample(
                (litres, gravity) =>
                    Assert.Equal(
                        2 * Wort.ExtractIn(Litres(litres), Sg(gravity)).Value.Kilograms,
                        Wort.ExtractIn(Litres(2 * litres), Sg(gravity)).Value.Kilograms,
                        1e-9 * (1 + litres)
                    )
            );

    [Fact]
    public void Water_holds_no_extract() =>
        Assert.InRange(Wort.ExtractPerVolume(SpecificGravity.Water).Value.GramsPerLiter, 0, 0.05);

    [Fact]
    public void What_is_no_wort_is_refused()
    {
        Assert.Equal(OutOfRange("gravity", "1", "1.179"), Wort.ExtractPerVolume(Sg(0.999)).Refusal);
        Assert.Equal(OutOfRange("gravity", "1", "1.179"), Wort.ExtractIn(Litres(1), Sg(1.18)).Refusal);
        Assert.Equal(OutOfRange("volume", "0", "10000000", "L"), Wort.MassOf(Litres(-1), Sg(1.05)).Refusal);
        Assert.Equal("volume", Wort.ExtractIn(Litres(-1), Sg(1.05)).Refusal?.What);
    }

    [Fact]
    public void Wort_is_beer_and_gas_and_yeast() =>
        Gen.Select(Gen.Double[1, 10_000], Gen.Double[1, 40], Gen.Double[0, 1])
            .Sample(
                (kg, original, share) =>
                {
                    var done = Fermented.From(Mass.FromKilograms(kg), Plato(original), Plato(original * share)).Value;
                    var parts = done.Beer + done.Formed.CarbonDioxide + done.Formed.DryYeast;
                    Assert.Equal(kg, parts.Kilograms, 1e-9 * kg);
                }
            );

    [Fact]
    public void Extract_is_conserved_too() =>
        Gen.Select(Gen.Double[1, 40], Gen.Double[0, 1])
            .Sample(
                (original, share) =>
                {
                    var done = Fermented.From(Mass.FromKilograms(100), Plato(original), Plato(original * share)).Value;
                    var left = done.Beer.Kilograms * original * share / 100;
                    Assert.Equal(original, left + done.Extract.Kilograms, 1e-9 * original);
                }
            );

    [Fact]
    public void A_batch_that_cannot_be_is_refused()
    {
        Assert.Equal("wort", Fermented.From(Mass.FromKilograms(-1), Plato(12), Plato(4)).Refusal?.What);
        Assert.Equal("volume", Fermented.From(Litres(-1), Plato(12), Plato(4)).Refusal?.What);
        Assert.Equal("extract", Fermented.From(Litres(1), Plato(41), Plato(4)).Refusal?.What);
        Assert.Equal("real-extract", Fermented.From(Litres(1), Plato(12), Plato(13)).Refusal?.What);
    }
}
