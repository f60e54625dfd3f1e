using BrewFloor.Brewing.Extract;
using CsCheck;
using static BrewFloor.Brewing.Extract.HydrometerScale;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class HydrometerCorrectionTests
{
    [Theory] // Kell 1975, ISO 1768:1975
    [Check("EX-20", "EX-21", "EX-22", "EX-23")]
    public void A_warm_sample_reads_low_and_a_cold_one_high(Check check) =>
        check.Agrees(
            HydrometerCorrection
                .At20(Sg(check.Given("reading")), Celsius(check.Given("at")), At20Celsius)
                .Value.Gravity.Value
        );

    [Fact]
    public void At_its_own_temperature_a_hydrometer_needs_no_correction() =>
        Gen.Int[98_000, 120_000]
            .Select(steps => Sg(steps / 100_000.0))
            .Sample(reading =>
            {
                Assert.Equal(
                    new CorrectedGravity(reading, true),
                    HydrometerCorrection.At20(reading, Celsius(20), At20Celsius).Value
                );
                Assert.Equal(
                    reading,
                    HydrometerCorrection.At20(reading, Celsius((60 - 32) / 1.8), At60Fahrenheit).Value.Gravity
                );
            });

    [Fact] // worked by hand: 1.048 (1 - 25e-6 · 4.4444) 999.012 / 998.204, Kell at 15.556 and 20 °C
    public void A_sixty_degree_hydrometer_at_twenty_celsius_reads_low() =>
        Assert.Equal(
            1.04873,
            HydrometerCorrection.At20(Sg(1.048), Celsius(20), At60Fahrenheit).Value.Gravity.Value,
            0.00002
        );

    [Theory]
    [InlineData(0.99999, false)]
    [InlineData(1, true)]
    [InlineData(1.06, true)]
    [InlineData(1.06001, false)]
    public void Beyond_what_it_was_checked_for_it_says_so(double reading, bool known) =>
        Assert.Equal(known, HydrometerCorrection.At20(Sg(reading), Celsius(25), At20Celsius).Value.IsInKnownRange);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(40.1)]
    public void Ice_and_hot_wort_are_refused(double celsius) =>
        Assert.Equal(
            OutOfRange("sample-temperature", "0", "40", "°C"),
            HydrometerCorrection.At20(Sg(1.048), Celsius(celsius), At20Celsius).Refusal
        );

    [Fact]
    public void A_correction_beyond_every_gravity_is_refused() =>
        Assert.Equal(
            OutOfRange("gravity", "0.98", "1.2"),
            HydrometerCorrection.At20(Sg(1.2), Celsius(40), At20Celsius).Refusal
        );

    [Fact] // below 6 °C water hardly grows, and the glass does
    public void From_six_degrees_the_warmer_the_sample_the_more_is_added() =>
        Gen.Select(Gen.Double[6, 39], Gen.Double[0.99, 1.18])
            .Sample(
                (t, reading) =>
                    Assert.True(
                        HydrometerCorrection.At20(Sg(reading), Celsius(t), At20Celsius).Value.Gravity
                            <= HydrometerCorrection.At20(Sg(reading), Celsius(t + 1), At20Celsius).Value.Gravity
                    )
            );
}
