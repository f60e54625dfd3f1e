using BrewFloor.Brewing.Forecast;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Forecast;

public class CurveTests
{
    private static readonly FermentationCurve Curve = CurveOf(12, 2.5, 0.10, 40);

    private static FermentationCurve CurveOf(double from, double to, double perHour, double midpoint) =>
        new(Plato(from), Plato(to), Frequency.FromHertz(perHour / 3600), TimeSpan.FromHours(midpoint));

    // "t(h)=0,12,24; P=11.8,..." in a check's input.
    private static GravityReading[] Readings(Check check)
    {
        var lists = check.Input.Split(';').Take(2).Select(p => p.Split('=')[^1].Split(' ')[^1].Split(',')).ToArray();
        return [.. lists[0].Zip(lists[1], (t, p) => Reading(double.Parse(t, Invariant), double.Parse(p, Invariant)))];
    }

    private static GravityReading Reading(double hours, double extract) =>
        new(TimeSpan.FromHours(hours), Plato(extract));

    private static double[] Parameters(CurveFit fit) =>
        [
            fit.Curve.From.Value,
            fit.Curve.To.Value,
            fit.Curve.Steepness.Hertz * 3600,
            fit.Curve.Midpoint.TotalHours,
            fit.SquaredRest,
        ];

    [Theory] // ASBC Yeast-14's form; Speers, Rogers, Smith 2003
    [Check("KI-01")]
    public void A_day_into_the_fall(Check check) => check.Agrees(Curve.At(TimeSpan.FromHours(24)).Value);

    [Theory] // calculus
    [Check("KI-02")]
    public void The_fastest_fall(Check check) => check.Agrees(Curve.FastestPerHour.Value);

    [Theory] // algebra
    [Check("KI-03")]
    public void Nineteen_twentieths_of_the_fall(Check check) =>
        check.Agrees(Curve.TimeOf(Percent(95)).Value.TotalHours);

    [Theory] // least squares by another program
    [Check("KI-04")]
    public void A_curve_through_eight_readings(Check check)
    {
        var fit = CurveFit.Through(Readings(check)).Value;

        (check with { Expected = check.Expected[..check.Expected.IndexOf("; SE", StringComparison.Ordinal)] }).Agrees(
            Parameters(fit)
        );
        Assert.EndsWith("SE 0.039,0.033,0.0016,0.17", check.Expected, StringComparison.Ordinal);
        Assert.InRange(fit.Errors.From.Value / 0.039, 0.95, 1.05);
        Assert.InRange(fit.Errors.To.Value / 0.033, 0.95, 1.05);
        Assert.InRange(fit.Errors.Steepness.Hertz * 3600 / 0.0016, 0.95, 1.05);
        Assert.InRange(fit.Errors.Midpoint.TotalHours / 0.17, 0.95, 1.05);
    }

    [Theory] // a bioprocess textbook's readings (attribution from memory), least squares by another program
    [Check("KI-05")]
    public void A_curve_through_a_textbooks_readings(Check check) =>
        check.Agrees(Parameters(CurveFit.Through(Readings(check)).Value));

    [Fact]
    public void Readings_that_rise_are_no_fermentation()
    {
        double[] rising = [2.5, 2.9, 3.6, 5.4, 8.2, 10.4, 11.5, 11.8];

        Assert.Equal(
            "no-curve",
            CurveFit.Through([.. rising.Select((extract, i) => Reading(12 * i, extract))]).Refusal?.Code
        );
    }

    [Fact]
    public void Readings_from_a_curve_give_that_curve_back() =>
        Gen.Select(Gen.Double[10, 18], Gen.Double[1, 4], Gen.Double[0.03, 0.15], Gen.Double[25, 80])
            .Sample(
                (from, to, perHour, midpoint) =>
                {
                    var curve = CurveOf(from, to, perHour, midpoint);
                    var end = midpoint + (4 / perHour);
                    var readings = Enumerable
                        .Range(0, 13)
                        .Select(i => Reading(i * end / 12, curve.At(TimeSpan.FromHours(i * end / 12)).Value));
                    var found = CurveFit.Through([.. readings]).Value.Curve;
                    Assert.Equal(from, found.From.Value, 1e-3);
                    Assert.Equal(to, found.To.Value, 1e-3);
                    Assert.Equal(midpoint, found.Midpoint.TotalHours, 1e-2);
                }
            );

    [Fact]
    public void A_curve_only_falls_and_reaches_its_shares() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0.01, 50], Gen.Double[0.1, 99.9])
            .Sample(
                (hours, more, share) =>
                {
                    Assert.True(Curve.At(TimeSpan.FromHours(hours + more)) <= Curve.At(TimeSpan.FromHours(hours)));
                    var reached = Curve.At(Curve.TimeOf(Percent(share)).Value).Value;
                    Assert.Equal(12 - (9.5 * share / 100), reached, 1e-6);
                }
            );

    [Fact]
    public void What_is_no_fall_is_refused()
    {
        var five = Enumerable.Range(0, 5).Select(i => Reading(i, 12)).ToArray();

        Assert.Equal(new Refusal("too-few-points", "readings", "5", ""), CurveFit.Through(five[..4]).Refusal);
        Assert.Equal("fall", CurveFit.Through(five).Refusal?.What);
        Assert.Equal("share", Curve.TimeOf(Percent(100)).Refusal?.What);
        Assert.Equal("steepness", CurveOf(12, 2, 0, 40).TimeOf(Percent(50)).Refusal?.What);
    }
}
