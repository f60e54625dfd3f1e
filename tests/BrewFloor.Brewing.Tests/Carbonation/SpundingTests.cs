using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using CsCheck;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Carbonation;

public class SpundingTests
{
    private static SpundingWish Wish(double volumes = 2.5, double celsius = 20, double headspace = 0) =>
        new(Vol(volumes), Celsius(celsius), Plato(2.5), Percent(headspace), Sea);

    private static SpundingPlan Plan(SpundingWish wish) => Spunding.Plan(wish, Bar(4)).Value;

    [Theory] // Balling's yield and our solubility
    [Check("CO-16")]
    public void Close_a_good_eight_tenths_above_the_end(Check check)
    {
        var plan = Plan(Wish());

        check.Agrees(plan.Gauge.Bars, plan.Needed.GramsPerLiter, plan.RemainingReal.Value, plan.Remaining.Value);
        Assert.Equal(2.5 + plan.Remaining.Value, plan.CloseAt.Value, 1e-12);
    }

    [Theory] // with the headspace's gas
    [Check("CO-17")]
    public void A_headspace_takes_its_share(Check check)
    {
        var plan = Plan(Wish(headspace: 10));

        check.Agrees(plan.Needed.GramsPerLiter, plan.Remaining.Value);
    }

    [Theory]
    [Check("CO-18")]
    public void Cold_it_takes_less_pressure(Check check)
    {
        var plan = Plan(Wish(2.4, 12));

        check.Agrees(plan.Gauge.Bars, plan.Remaining.Value);
    }

    [Theory] // Balling
    [Check("CO-19")]
    public void A_degree_makes_nearly_two_volumes(Check check)
    {
        var gas = Spunding.GasFrom(Plato(1)).Value;
        var point = DegreesPlato.From(Sg(1.010)).Value.Value - DegreesPlato.From(Sg(1.009)).Value.Value;
        var volumes = gas / CarbonDioxideContent.PerVolume;

        check.Agrees(gas.GramsPerLiter, volumes, volumes * point);
    }

    [Theory] // our model, summed elsewhere
    [Check("CO-34")]
    public void A_weak_tank_cannot_hold_a_lively_beer_warm(Check check) =>
        check.Agrees([
            .. new[] { 20.0, 12, 4 }.Select(t => Spunding.MostAt(Bar(1.0342), Celsius(t), Sea).Value.Volumes),
        ]);

    [Theory] // our model, summed elsewhere
    [Check("CO-31")]
    public void An_open_beer_keeps_what_its_warmest_day_left(Check check) =>
        check.Agrees([
            .. new[] { 0.0, 4, 8, 12, 15, 20, 25 }.Select(t => ResidualGas.After(Celsius(t), Sea).Value.Volumes),
        ]);

    [Fact]
    public void The_gas_still_to_come_is_all_that_is_needed() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[1, 30], Gen.Double[0, 100])
            .Sample(
                (share, celsius, headspace) =>
                {
                    var (open, most) = (
                        ResidualGas.After(Celsius(celsius), Sea).Value.Volumes,
                        Spunding.MostAt(Bar(4), Celsius(celsius), Sea).Value.Volumes
                    );
                    var plan = Plan(Wish(open + (share * 0.999 * (most - open)) + 1e-6, celsius, headspace));
                    Assert.Equal(plan.Needed.GramsPerLiter, Spunding.GasFrom(plan.Remaining).Value.GramsPerLiter, 1e-9);
                    Assert.Equal(plan.RemainingReal.Value, 0.81 * plan.Remaining.Value, 1e-9);
                }
            );

    [Fact]
    public void Cooled_it_loses_pressure_and_without_headspace_goes_where_the_cold_beer_rests()
    {
        var cold = Spunding.GaugeAfterCooling(Wish(), Celsius(4)).Value;

        Assert.Equal(Equilibrium.GaugeFor(Vol(2.5), Celsius(4), Sea).Value.Bars, cold.Bars, 1e-9);
        Assert.True(Spunding.GaugeAfterCooling(Wish(headspace: 20), Celsius(4)).Value > cold); // gas from above adds
    }

    [Fact]
    public void A_target_out_of_reach_is_refused_with_what_the_tank_can()
    {
        var refusal = Spunding.Plan(Wish(), Bar(1.0342)).Refusal;

        Assert.Equal(OutOfRange("carbonation", "0.84", "1.69", "vol"), refusal);
        Assert.Equal("carbonation", Spunding.Plan(Wish(0.5), Bar(4)).Refusal?.What);
        Assert.Equal(OutOfRange("rating", "1", "1000", "kPa"), Spunding.Plan(Wish(), Bar(0)).Refusal);
        Assert.Equal("temperature", Spunding.Plan(Wish(celsius: 41), Bar(4)).Refusal?.What);
        Assert.Equal("headspace", Spunding.Plan(Wish(headspace: 201), Bar(4)).Refusal?.What);
        Assert.Equal("final-extract", Spunding.Plan(Wish() with { Final = Plato(-2) }, Bar(4)).Refusal?.What);
        Assert.Equal("headspace", Spunding.GaugeAfterCooling(Wish(headspace: -1), Celsius(4)).Refusal?.What);
        Assert.Equal("crash-temperature", Spunding.GaugeAfterCooling(Wish(), Celsius(21)).Refusal?.What);
        Assert.Equal("apparent-extract", Spunding.GasFrom(Plato(-0.1)).Refusal?.What);
    }
}
