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

    private static readonly Batch Unplanned = Batch118 with { LimitOfAttenuation = null };

    /// <summary>The same beer a month before, under another number.</summary>
    private static (Batch Thing, BatchState State) Earlier =>
        (Unplanned with { Number = 117 }, Fallen().Of(Batch118) with { OriginalGravity = SpecificGravity.Of(1.050) });

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
    public void What_the_strain_did_before_says_where_it_ends()
    {
        var learned = Learning(Unplanned, Earlier).Value;

        Assert.Equal([117], learned.LearnedFrom);
        Assert.False(learned.IsEndAssumed);
        var (strain, assumed) = (Plato(1.048) * Plato(1.008) / Plato(1.050), Plato(1.048) / 4);
        Assert.Equal(((4 * strain) + assumed) / 5, learned.Expected.Value, 0.01); // 0.5 °P against 1
    }

    [Fact]
    public void A_plan_that_the_strain_bears_out_is_foretold_more_sharply()
    {
        var (plan, learned) = (Learning(Batch118).Value.Outlook, Learning(Batch118, Earlier).Value.Outlook);

        Assert.True(Width(learned.Final) < Width(plan.Final));
        Assert.True(Spread(learned.Done.Select(at => at.TotalHours)) < Spread(plan.Done.Select(at => at.TotalHours)));

        static double Width(Band<DegreesPlato> band) => band.High80.Value - band.Low80.Value;

        static double Spread(Band<double> band) => band.High80 / band.Low80; // a slower strain is later by more hours
    }

    [Fact]
    public void A_batch_that_runs_was_of_another_kind_or_was_hardly_read_teaches_nothing()
    {
        var (thing, over) = Earlier;
        var running = over with { Packaged = null };
        var hardlyRead = over with { Gravities = [.. over.Gravities.TakeLast(4)] };

        Assert.Empty(Learning(Unplanned, (thing, running)).Value.LearnedFrom);
        Assert.Empty(Learning(Unplanned, (thing with { Kind = BeerKind.Lager }, over)).Value.LearnedFrom);
        Assert.Empty(Learning(Unplanned, (thing, hardlyRead)).Value.LearnedFrom);
    }

    [Fact]
    public void A_batch_that_never_stood_still_teaches_no_end()
    {
        var hopped = Fallen(DryHopped().On(8)).Of(Batch118); // six readings before, the last two a day apart
        var pouredAway = Pitched118
            .And(Gravity(1.047).On(1), Gravity(1.040).On(2), Gravity(1.034).On(3), Gravity(1.030).On(4))
            .And(Gravity(1.028).On(4, hour: 20), Discarded(300, rest: true).On(5))
            .Of(Batch118);

        Assert.Empty(Learning(Unplanned, (Earlier.Thing, hopped)).Value.LearnedFrom);
        Assert.Empty(Learning(Unplanned, (Earlier.Thing, pouredAway)).Value.LearnedFrom);
    }

    [Fact]
    public void A_batch_whose_fall_nobody_saw_teaches_nothing()
    {
        var (thing, over) = Earlier;
        var late = over with { Gravities = [.. over.Gravities.Where(read => read.Moment.At > Day(5))] };

        Assert.Empty(Learning(Unplanned, (thing, late)).Value.LearnedFrom);
    }

    [Fact]
    public void A_forced_ferment_counts_for_more_than_plan_and_strain()
    {
        var forced = Learning(Batch118 with { IsLimitForced = true }, Earlier).Value;

        Assert.True(forced.IsEndForced);
        Assert.Equal(Plato(1.010), forced.Expected.Value, 0.001);
        Assert.False(Learning(Unplanned with { IsLimitForced = true }).Value.IsEndForced); // no limit, nothing found
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
        var forecast = Falling.Of(Batch118).ForecastOf(Unplanned, [], Rules, Day(4.1)).Value;

        Assert.True(forecast.IsEndAssumed);
        Assert.Equal(DegreesPlato.From(SpecificGravity.Of(1.048)).Value.Value / 4, forecast.Expected.Value, 0.01);
    }

    [Fact]
    public void A_lager_is_expected_to_take_longer()
    {
        var ale = Forecast(Pitched118, 1).Value.Outlook.Done.Likely;
        var lager = Pitched118
            .Of(Batch118)
            .ForecastOf(Batch118 with { Kind = BeerKind.Lager }, [], Rules, Day(1))
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

    private static Floor Fallen(params LogEntry[] besides) =>
        Pitched118.And([
            Gravity(1.048).On(1),
            Gravity(1.038).On(2),
            Gravity(1.024).On(3),
            .. besides,
            Gravity(1.013).On(4),
            Gravity(1.010).On(5),
            Gravity(1.009).On(6),
            Gravity(1.008).On(7),
            Gravity(1.008).On(9),
            Gravity(1.008).On(10),
            Kegged(300).On(12),
        ]);

    private static Brewing.Outcome<BatchForecast> Learning(
        Batch thing,
        params (Batch Thing, BatchState State)[] ofItsStrain
    ) => Pitched118.Of(Batch118).ForecastOf(thing, ofItsStrain, Rules, Day(1));

    private static double Plato(double gravity) => DegreesPlato.From(SpecificGravity.Of(gravity)).Value.Value;

    private static Brewing.Outcome<BatchForecast> Forecast(Floor floor, double day) =>
        floor.Of(Batch118).ForecastOf(Batch118, [], Rules, Day(day));
}
