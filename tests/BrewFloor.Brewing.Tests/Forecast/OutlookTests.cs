using BrewFloor.Brewing.Forecast;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Forecast;

public class OutlookTests
{
    private static readonly FermentationCurve Ale = new(
        Plato(12.3),
        Plato(2.6),
        Frequency.FromHertz(0.09 / 3600),
        TimeSpan.FromHours(36)
    );

    private static FermentationPrior Prior =>
        FermentationPrior.FromRecipe(Plato(12), Percent(79), Celsius(19), Plato(0.15)).Value;

    private static GravityReading Reading(double hours, double off = 0) =>
        new(TimeSpan.FromHours(hours), Plato(Ale.At(TimeSpan.FromHours(hours)).Value + off));

    private static Outlook After(params GravityReading[] readings) =>
        Outlook.From(Prior, readings, readings.Length > 0 ? readings[^1].After : TimeSpan.Zero).Value;

    private static GravityReading[] Every(double hours, int count) =>
        [.. Enumerable.Range(0, count).Select(i => Reading(i * hours))];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Fewer_than_three_readings_show_what_was_believed_and_say_so(int readings)
    {
        var outlook = After(Every(12, readings));

        Assert.Equal(OutlookBasis.Prior, outlook.Basis);
        Assert.Equal(Prior.Final.Value, outlook.Final.Likely.Value, 0.1);
        Assert.InRange(outlook.Final.High80.Value - outlook.Final.Low80.Value, 2.3, 3);
        Assert.Empty(outlook.Signs);
    }

    [Fact]
    public void Readings_narrow_the_bands()
    {
        var (few, many) = (After(Every(12, 3)), After(Every(12, 10)));

        Assert.Equal(OutlookBasis.Readings, few.Basis);
        Assert.True(Width(many.Final) < Width(few.Final) / 2);
        Assert.Equal(2.6, many.Final.Likely.Value, 0.3);

        static double Width(Band<BrewFloor.Brewing.Extract.DegreesPlato> band) => band.High80.Value - band.Low80.Value;
    }

    [Fact]
    public void Bands_keep_their_order_and_gravity_falls()
    {
        var outlook = After(Every(10, 5));
        Gen.Select(Gen.Double[0, 300], Gen.Double[5, 100])
            .Sample(
                (hours, more) =>
                {
                    var (now, later) = (
                        outlook.At(TimeSpan.FromHours(hours)).Value,
                        outlook.At(TimeSpan.FromHours(hours + more)).Value
                    );
                    Assert.True(now.Low95 <= now.Low80 && now.Low80 <= now.Likely);
                    Assert.True(now.Likely <= now.High80 && now.High80 <= now.High95);
                    Assert.True(later.Likely <= now.Likely);
                }
            );
    }

    [Fact]
    public void Lower_gravities_come_later_and_some_never()
    {
        var outlook = After(Every(10, 6));

        Assert.True(outlook.TimeTo(Plato(4)).Value.Likely > outlook.TimeTo(Plato(8)).Value.Likely);
        Assert.Equal(TimeSpan.MaxValue, outlook.TimeTo(Plato(-1)).Value.Likely);
        Assert.Equal(TimeSpan.Zero, outlook.TimeTo(Plato(13)).Value.Likely);
    }

    [Fact]
    public void One_wrong_reading_is_named_and_does_little_harm()
    {
        var readings = Every(8, 10);
        readings[5] = Reading(40, off: 2.5);
        var (right, wrong) = (After(Every(8, 10)), After(readings));
        var sign = Assert.Single(wrong.Signs);

        Assert.Equal((SignKind.DoubtfulReading, 6), (sign.Kind, sign.Reading));
        Assert.Equal(2.5, sign.Seen.Value - sign.Expected.Value, 0.4);
        Assert.Equal(right.Final.Likely.Value, wrong.Final.Likely.Value, 0.2);
        Assert.Empty(right.Signs);
    }

    [Fact]
    public void A_batch_that_stops_high_is_stuck()
    {
        GravityReading[] readings =
        [
            .. Every(12, 4),
            .. new[] { 60.0, 72, 84, 96, 108, 120 }.Select(t => new GravityReading(TimeSpan.FromHours(t), Plato(6.3))),
        ];
        var sign = After(readings).Signs.Single(s => s.Kind is SignKind.Stuck);

        Assert.Equal(10, sign.Reading);
        Assert.Equal(0, sign.Seen.Value, 0.05); // its fall in a day
        Assert.Equal(Prior.Final, sign.Expected);
    }

    [Fact]
    public void A_batch_that_has_hardly_begun_after_four_days_is_slow()
    {
        GravityReading[] readings =
        [
            .. new[] { 0.0, 24, 48, 72, 96 }.Select(t => new GravityReading(
                TimeSpan.FromHours(t),
                Plato(12 - (t / 80))
            )),
        ];
        var sign = Assert.Single(After(readings).Signs);

        Assert.Equal((SignKind.Slow, 5), (sign.Kind, sign.Reading));
        Assert.True(sign.Seen > sign.Expected);
    }

    [Fact]
    public void Earlier_batches_and_a_forced_ferment_narrow_what_is_believed()
    {
        var batch = new EarlierBatch(Percent(82), Frequency.FromHertz(0.07 / 3600), TimeSpan.FromHours(40));
        var strain = Prior.WithEarlier([batch, batch, batch]).Value;
        var forced = strain.WithForcedFerment(Plato(2)).Value;

        Assert.Equal(((12 * 12 * 0.18) + Prior.Final.Value) / 13, strain.Final.Value, 1e-9); // three of 0.5 °P against the plan's 1
        Assert.True(strain.LogError < Prior.LogError && strain.FinalPlusMinus < Prior.FinalPlusMinus);
        Assert.InRange(strain.Steepness.Hertz * 3600, 0.07, Prior.Steepness.Hertz * 3600);
        Assert.Equal((2, 0.15), (forced.Final.Value, forced.FinalPlusMinus.Value));
        Assert.Equal(Prior, Prior.WithEarlier([]).Value);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_its_row()
    {
        Assert.Equal("original-extract", Of(1, 79, 19)?.What);
        Assert.Equal("attenuation", Of(12, 106, 19)?.What);
        Assert.Equal("temperature", Of(12, 79, 31)?.What);
        Assert.Equal("reading-error", Of(12, 79, 19, 0)?.What);
        Assert.Equal(("attenuation", 1), Row(Prior.WithEarlier([default]).Refusal));
        Assert.Equal("final-extract", Prior.WithForcedFerment(Plato(13)).Refusal?.What);
        Assert.Equal(("after", 2), Row(Outlook.From(Prior, [Reading(10), Reading(9)], TimeSpan.FromHours(10)).Refusal));
        Assert.Equal(("gravity", 1), Row(Outlook.From(Prior, [Reading(10, 40)], TimeSpan.FromHours(10)).Refusal));
        Assert.Equal("now", Outlook.From(Prior, [Reading(10)], TimeSpan.FromHours(9)).Refusal?.What);
        Assert.Equal("after", After().At(TimeSpan.FromHours(-1)).Refusal?.What);
        Assert.Equal("gravity", After().TimeTo(Plato(41)).Refusal?.What);

        static (string?, int?) Row(Refusal? refusal) => (refusal?.What, refusal?.Row);
        static Refusal? Of(double original, double attenuation, double celsius, double error = 0.15) =>
            FermentationPrior.FromRecipe(Plato(original), Percent(attenuation), Celsius(celsius), Plato(error)).Refusal;
    }
}
