using BrewFloor.Domain.Batches;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class GravityReadTests
{
    [Theory]
    // checks EX-20 to EX-22
    [InlineData(1.0480, 30, 1.0504)]
    [InlineData(1.0480, 10, 1.0467)]
    [InlineData(1.0100, 4, 1.0086)]
    public void A_hydrometer_is_corrected_to_20_C(double read, double sample, double at20) =>
        Assert.Equal(at20, Hydrometer(read, GravityScale.Sg2020, sample).Gravity20!.Value.Value, 0.00005);

    [Fact]
    public void A_density_meter_corrects_for_itself() =>
        Assert.Equal(
            Sg20(1.048),
            new GravityRead(1.048, GravityScale.Sg2020, Instrument.DensityMeter, C(30)).Gravity20
        );

    [Fact]
    public void A_scale_in_Plato_is_read_as_the_gravity_of_that_extract() =>
        // the sucrose table: 12 °P is 1.04836
        Assert.Equal(
            1.04836,
            new GravityRead(12, GravityScale.Plato, Instrument.DensityMeter, null).Gravity20!.Value.Value,
            0.00002
        );

    [Fact]
    public void A_hydrometer_made_for_60_F_is_true_there() =>
        Assert.Equal(Sg20(1.048), Hydrometer(1.048, GravityScale.Sg6060, (60 - 32) / 1.8).Gravity20);

    [Theory]
    [InlineData(48, GravityScale.Sg2020, 20)] // "48" for 1.048
    [InlineData(1.21, GravityScale.Sg2020, 20)]
    [InlineData(0.97, GravityScale.Sg2020, 20)]
    [InlineData(double.NaN, GravityScale.Sg2020, 20)]
    [InlineData(41, GravityScale.Plato, 20)]
    [InlineData(double.NaN, GravityScale.Plato, 20)]
    [InlineData(1.048, GravityScale.Sg2020, 41)] // the correction ends at 40 °C: cool the sample
    public void What_no_beer_reads_is_unreadable_and_kept_out_of_the_state(
        double read,
        GravityScale scale,
        double sample
    )
    {
        GravityTaken taken = new(K3.Id, Batch118.Id, Hydrometer(read, scale, sample));
        var floor = After(Filled().On(0));

        Assert.Equal(["gravity-unreadable"], floor.Says(taken.On(3)).Codes());
        Assert.Empty(floor.And(taken.On(3)).Of(Batch118).Gravities);
    }

    [Fact]
    public void A_readable_gravity_is_kept_with_its_tank() =>
        Assert.Equal(
            (K3.Id, Sg20(1.030), Day(3)),
            After(Filled().On(0), Gravity(1.030).On(3)).Of(Batch118).Gravities is [var only]
                ? (only.TankId, only.Gravity, only.Moment.At)
                : default
        );

    [Fact]
    public void Of_a_sensor_that_reports_every_hour_the_early_fall_stays_and_so_do_the_latest_hundred()
    {
        var readings = Enumerable.Range(1, 500).Select(i => Gravity(1.060 - (i / 10_000.0)).On(0, 8 + i));
        var kept = After([Filled().On(0), .. readings]).Of(Batch118).Gravities;

        Assert.Equal((200, Sg20(1.0599), Sg20(1.0100)), (kept.Count, kept[0].Gravity, kept[^1].Gravity));
        Assert.Equal(Day(0, 8 + 401), kept[^100].Moment.At); // the latest hundred, hour by hour
        var gaps = kept.Zip(kept.Skip(1), (one, next) => (next.Moment.At - one.Moment.At).TotalHours);
        Assert.InRange(gaps.Max(), 1, 8); // 400 h in 100 readings: nowhere is a day missing
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(4.2, true)]
    [InlineData(14, true)]
    [InlineData(14.1, false)]
    [InlineData(-0.1, false)]
    [InlineData(double.NaN, false)]
    public void A_pH_is_0_to_14(double ph, bool isReadable) =>
        Assert.Equal(isReadable, After(Filled().On(0)).Says(Ph(ph).On(3)).Objections is []);

    private static GravityRead Hydrometer(double read, GravityScale scale, double sample) =>
        new(read, scale, Instrument.Hydrometer, C(sample));
}
