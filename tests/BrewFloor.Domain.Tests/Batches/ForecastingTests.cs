using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class ForecastingTests
{
    private static readonly Floor Pitched118 = After(FilledAt(1.048).On(0), Pitched().On(0, hour: 10));

    private static readonly Floor Falling = Pitched118.And(
        Gravity(1.046).On(1),
        Gravity(1.034).On(2),
        Gravity(1.022).On(3),
        Gravity(1.015).On(4)
    );

    [Fact]
    public void Its_own_readings_make_the_forecast_and_the_end_lies_below_the_last()
    {
        var forecast = Forecast(Falling, 4.1).Value;

        Assert.Equal(OutlookBasis.Readings, forecast.Outlook.Basis);
        Assert.Equal(4, forecast.Readings.Count);
        Assert.InRange(forecast.Outlook.Final.Likely.Value, 1.5, 3.5); // the limit is 2.6 °P
        Assert.InRange(forecast.At(forecast.Outlook.Done.Likely)!.Value, Day(4), Day(12));
        Assert.False(forecast.IsEndAssumed);
        Assert.True(forecast.IsTemperatureAssumed);
    }

    [Fact]
    public void Before_anything_is_read_it_rests_on_what_is_believed()
    {
        var forecast = Forecast(Pitched118, 1).Value;

        Assert.Equal(OutlookBasis.Prior, forecast.Outlook.Basis);
        Assert.Empty(forecast.Readings);
    }

    [Fact]
    public void Without_a_limit_of_attenuation_three_quarters_of_the_fall_are_taken_and_said_to_be()
    {
        var forecast = Falling
            .Of(Batch118)
            .ForecastOf(Batch118 with { LimitOfAttenuation = null }, Rules, Day(4.1))
            .Value;

        Assert.True(forecast.IsEndAssumed);
        Assert.Equal(DegreesPlato.From(SpecificGravity.Of(1.048)).Value.Value / 4, forecast.Expected.Value, 0.01);
    }

    [Fact]
    public void A_lager_is_expected_to_take_longer()
    {
        var ale = Forecast(Pitched118, 1).Value.Outlook.Done.Likely;
        var lager = Pitched118
            .Of(Batch118)
            .ForecastOf(Batch118 with { Kind = BeerKind.Lager }, Rules, Day(1))
            .Value.Outlook.Done.Likely;

        Assert.True(lager > 1.5 * ale, $"{lager} and {ale}");
    }

    [Fact]
    public void A_reading_far_off_is_doubted()
    {
        var floor = Falling.And(Gravity(1.040).On(5), Gravity(1.012).On(5, hour: 20));

        var sign = Assert.Single(Forecast(floor, 6).Value.Outlook.Signs);

        Assert.Equal((SignKind.DoubtfulReading, 5), (sign.Kind, sign.Reading));
    }

    [Fact]
    public void There_is_none_before_the_yeast_after_dry_hops_or_when_it_is_finished()
    {
        var finished = Falling.And(Gravity(1.010).On(9), Gravity(1.010).On(12));

        Assert.Equal("not-fermenting", Forecast(After(FilledAt(1.048).On(0)), 1).Refusal!.Code);
        Assert.Equal("fall-broken", Forecast(Falling.And(DryHopped().On(5)), 6).Refusal!.Code);
        Assert.Equal("not-fermenting", Forecast(finished, 13).Refusal!.Code);
        Assert.Equal(
            "several-tanks",
            Forecast(Falling.And((Racked(400) with { IsRest = false }).On(5)), 6).Refusal!.Code
        );
    }

    private static Brewing.Outcome<BatchForecast> Forecast(Floor floor, double day) =>
        floor.Of(Batch118).ForecastOf(Batch118, Rules, Day(day));
}
