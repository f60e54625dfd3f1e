using BrewFloor.Brewing.Carbonation;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class EquilibriumTests
{
    private static double VolumesAt(double celsius, double bar, double metres = 0) =>
        Equilibrium.ContentAt(Celsius(celsius), Bar(bar), Metres(metres)).Value.Volumes;

    private static double GaugeFor(double volumes, double celsius, double metres = 0) =>
        Equilibrium.GaugeFor(Vol(volumes), Celsius(celsius), Metres(metres)).Value.Bars;

    [Theory] // Brewing Techniques 2(1), Table I: a printed chart in °F and psi
    [Check("CO-01", "CO-02", "CO-03", "CO-04", "CO-05", "CO-06", "CO-07", "CO-08", "CO-09", "CO-10")]
    public void The_printed_chart_is_met(Check check)
    {
        var words = check.Input.Split(' ');
        var (fahrenheit, psi) = (double.Parse(words[0], Invariant), double.Parse(words[2], Invariant));
        var found = Equilibrium
            .ContentAt(Temperature.FromDegreesFahrenheit(fahrenheit), Pressure.FromPoundsForcePerSquareInch(psi), Sea)
            .Value.Volumes;
        var model = double.Parse(check.Expected.Split("model ")[1].TrimEnd(')'), Invariant);

        (check with { Tolerance = "+-0.05" }).Agrees(found);
        Assert.Equal(model, found, 0.003);
    }

    [Theory] // our model, summed elsewhere
    [Check("CO-32", "CO-33")]
    public void The_pressures_for_a_carbonation(Check check)
    {
        var volumes = check.Id is "CO-32" ? 2.2 : 2.8;

        check.Agrees([.. new[] { 2.0, 4, 8, 12, 16, 20 }.Select(t => GaugeFor(volumes, t))]);
    }

    [Theory] // US Standard Atmosphere
    [Check("CO-21")]
    public void High_up_the_gauge_shows_more_for_the_same_beer(Check check)
    {
        var shift = Atmosphere.GaugeShift(Metres(1500)).Value;

        (check with { Tolerance = "+-0.05; +-0.005" }).Agrees(shift.Kilopascals, shift.PoundsForcePerSquareInch);
        Assert.Equal(shift.Bars, GaugeFor(2.5, 4, 1500) - GaugeFor(2.5, 4), 1e-9);
    }

    [Theory] // a published draught chart
    [Check("CO-36")]
    public void A_draught_chart_agrees(Check check) =>
        check.Agrees(Atmosphere.GaugeShift(Length.FromFeet(1000)).Value.PoundsForcePerSquareInch);

    [Theory] // US Standard Atmosphere, from memory
    [Check("CO-35")]
    public void Air_pressures_of_a_few_heights(Check check) =>
        check.Agrees([.. new[] { 500.0, 1000, 1500, 2000 }.Select(h => Atmosphere.At(Metres(h)).Value.Kilopascals)]);

    [Theory] // molar mass and volume, second virial coefficient
    [Check("CO-14")]
    public void A_volume_weighs_what_a_litre_of_gas_does(Check check) =>
        check.Agrees(CarbonDioxideContent.PerVolume.GramsPerLiter, CarbonDioxideContent.PerRealVolume.GramsPerLiter);

    [Fact]
    public void The_pressure_for_a_content_holds_that_content() =>
        Gen.Select(Gen.Double[0.01, 5], Gen.Double[0, 30], Gen.Double[-400, 4000])
            .Sample(
                (volumes, celsius, metres) =>
                    Assert.Equal(volumes, VolumesAt(celsius, GaugeFor(volumes, celsius, metres), metres), 1e-9)
            );

    [Fact]
    public void Colder_and_harder_pressed_holds_more() =>
        Gen.Select(Gen.Double[0, 39], Gen.Double[0, 5])
            .Sample(
                (celsius, bar) =>
                    VolumesAt(celsius, bar) > VolumesAt(celsius + 1, bar)
                    && VolumesAt(celsius, bar + 0.1) > VolumesAt(celsius, bar)
            );

    [Fact]
    public void Twice_the_absolute_pressure_holds_twice_as_much() =>
        Gen.Select(Gen.Double[0, 40], Gen.Double[0, 3])
            .Sample(
                (celsius, bar) =>
                    Assert.Equal(2 * VolumesAt(celsius, bar), VolumesAt(celsius, (2 * bar) + 1.01325), 1e-9)
            );

    [Fact]
    public void Weight_and_volumes_are_the_same_thing()
    {
        Assert.Equal(Vol(1), CarbonDioxideContent.OfGramsPerLitre(1.9635).Value);
        Assert.True(Vol(1) < Vol(2) && Vol(2) > Vol(1) && Vol(2) >= Vol(2) && Vol(2) <= Vol(2));
        Assert.Equal(3.927, Vol(2).ByWeight.GramsPerLiter, 1e-9);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal(OutOfRange("temperature", "0", "40", "°C"), At(-0.1, 1));
        Assert.Equal(OutOfRange("pressure-gauge", "-101.325", "898.675", "kPa"), At(4, 9));
        Assert.Equal(OutOfRange("altitude", "-500", "5000", "m"), At(4, 1, 5001));
        Assert.Equal("carbonation", Equilibrium.GaugeFor(Vol(10), Celsius(30), Sea).Refusal?.What);
        Assert.Equal("temperature", Equilibrium.GaugeFor(Vol(1), Celsius(41), Sea).Refusal?.What);
        Assert.Equal(OutOfRange("carbonation", "0", "15", "vol"), CarbonDioxideContent.OfVolumes(-1).Refusal);
        Assert.Equal(OutOfRange("carbonation", "0", "30", "g/L"), CarbonDioxideContent.OfGramsPerLitre(31).Refusal);
        Assert.Equal("altitude", Atmosphere.GaugeShift(Metres(6000)).Refusal?.What);
    }

    private static Refusal? At(double celsius, double bar, double metres = 0) =>
        Equilibrium.ContentAt(Celsius(celsius), Bar(bar), Metres(metres)).Refusal;
}
