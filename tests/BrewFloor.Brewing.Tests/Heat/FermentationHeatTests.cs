using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Brewing.Heat;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Heat;

public class FermentationHeatTests
{
    private static Fermented Batch(double litres = 100, double original = 12, double real = 4.2) =>
        Fermented.From(Litres(litres), Plato(original), Plato(real)).Value;

    private static double Peak(double steepness) =>
        FermentationHeat
            .AtPeak(Batch().Wort, Plato(12), Plato(4.2), Frequency.FromHertz(steepness / 3600))
            .Value.Likely.InWatts();

    [Theory] // standard enthalpies
    [Check("HE-01")]
    public void Glucose_by_its_enthalpies(Check check)
    {
        var kilojoules = FermentationHeat.OfGlucose.KilojoulesPerKilogram;

        check.Agrees(-kilojoules * 0.180156, kilojoules);
    }

    [Theory] // Balling and 587 kJ/kg
    [Check("HE-02")]
    public void A_hectolitre_would_boil_over_by_twelve_degrees(Check check) =>
        check.Agrees(
            Batch().Extract.Kilograms,
            FermentationHeat.Of(Batch()).Likely.Kilojoules,
            FermentationHeat.Warming(Batch(), SpecificHeat.Wort).Value.Kelvins
        );

    [Theory] // the logistic's steepest point
    [Check("HE-03")]
    public void The_peak_of_an_ale(Check check) =>
        check.Agrees(
            new FermentationCurve(Plato(12), Plato(4.2), Frequency.FromHertz(0.10 / 3600), TimeSpan.FromHours(40))
                .FastestPerHour
                .Value,
            Peak(0.10)
        );

    [Theory] // the same
    [Check("HE-22")]
    public void The_peak_of_a_lager(Check check) => check.Agrees(Peak(0.03));

    [Fact]
    public void All_heat_is_the_heat_of_every_moment() // a steady fall of 2 °P a day for three days
    {
        var wort = Kg(1000);
        var power = FermentationHeat.At(wort, Plato(2)).Value.Likely;

        Assert.Equal(60 * 587, (power * TimeSpan.FromDays(3)).Kilojoules, 1e-6);
    }

    [Fact]
    public void The_range_keeps_its_order_and_twice_the_wort_is_twice_as_hot() =>
        Gen.Select(Gen.Double[1, 5000], Gen.Double[0, 15])
            .Sample(
                (kg, fall) =>
                {
                    var (one, two) = (
                        FermentationHeat.At(Kg(kg), Plato(fall)).Value,
                        FermentationHeat.At(Kg(2 * kg), Plato(fall)).Value
                    );
                    Assert.True(one.Low <= one.Likely && one.Likely <= one.High);
                    Assert.Equal(2 * one.Likely.InWatts(), two.Likely.InWatts(), 1e-6);
                }
            );

    [Fact] // CI-07 and HE-02 are one batch
    public void Heat_and_gas_come_from_the_same_extract() =>
        Assert.Equal(
            587 / 0.4629,
            FermentationHeat.Of(Batch()).Likely.Kilojoules / Batch().Formed.CarbonDioxide.Kilograms,
            0.2
        );

    [Fact] // common practice, no source; glucose 563, maltose about 604: check HE-01
    public void Real_worts_lie_between_555_and_650()
    {
        var heat = FermentationHeat.PerExtract;

        Assert.Equal((555, 650), (heat.Low.KilojoulesPerKilogram, heat.High.KilojoulesPerKilogram));
        Assert.InRange(FermentationHeat.OfGlucose, heat.Low, heat.High);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal("fall-per-day", FermentationHeat.At(Kg(1), Plato(31)).Refusal?.What);
        Assert.Equal("wort", FermentationHeat.At(Kg(-1), Plato(1)).Refusal?.What);
        Assert.Equal("specific-heat", FermentationHeat.Warming(Batch(), SpecificEntropy.Zero).Refusal?.What);
        Assert.Equal("wort", FermentationHeat.Warming(Batch(0), SpecificHeat.Wort).Refusal?.What);
        Assert.Equal("real-extract", Of(12, 13)?.What);
        Assert.Equal("original-extract", Of(41, 13)?.What);
        Assert.Equal("steepness", Of(12, 4, 100)?.What);

        static Refusal? Of(double from, double to, double perDay = 1) =>
            FermentationHeat.AtPeak(Kg(1), Plato(from), Plato(to), Frequency.FromHertz(perDay / 86_400)).Refusal;
    }
}
