using BrewFloor.Brewing.Oxygen;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Oxygen;

public class PurgeTests
{
    private static readonly VolumeConcentration Air = O2(20.95);

    private static readonly double[] Pressures = [0.5, 1.0, 2.07];

    private static VolumeConcentration O2(double percent) => VolumeConcentration.FromPercent(percent);

    private static CyclePurge Gauge(double bar) => new(Bar(1.01325), Bar(1.01325 + bar));

    [Theory] // a published purging worksheet; Crowl & Louvar, chapter 7
    [Check("OX-05")]
    public void Two_cycles_of_five_to_one(Check check) =>
        check.Agrees(new CyclePurge(Bar(1), Bar(5)).After(O2(21), 2).Value.Percent);

    [Theory]
    [Check("OX-07")]
    public void Five_cycles_of_thirty_psi(Check check)
    {
        var cycles = Gauge(2.0684).CyclesTo(Air, O2(0.1)).Value;

        check.Agrees(cycles, Math.Ceiling(cycles));
        Assert.True(Gauge(2.0684).After(Air, 5).Value < O2(0.1) && Gauge(2.0684).After(Air, 4).Value > O2(0.1));
    }

    [Theory]
    [Check("OX-21", "OX-22")]
    public void The_table_of_cycles(Check check) =>
        check.Agrees([
            .. Pressures.Select(bar => Gauge(bar).CyclesTo(Air, O2(check.Id is "OX-21" ? 0.1 : 0.01)).Value),
        ]);

    [Theory] // ideal gas
    [Check("OX-08")]
    public void A_cycle_costs_gas(Check check) => check.Agrees(Gauge(1).GasOfOne(Litres(100), Celsius(20)).Value.Grams);

    [Fact]
    public void The_cycles_to_a_level_reach_that_level() =>
        Gen.Select(Gen.Double[0.1, 5], Gen.Int[0, 12], Gen.Double[0, 100])
            .Sample(
                (bar, cycles, ppm) =>
                {
                    var purge = Gauge(bar) with { SupplyOxygen = VolumeConcentration.FromPartsPerMillion(ppm) };
                    var left = purge.After(Air, cycles).Value;
                    if (left.Percent > (ppm / 1e4) + 1.1e-4)
                    {
                        Assert.Equal(cycles, purge.CyclesTo(Air, left).Value, 1e-3);
                    }
                }
            );

    [Fact]
    public void No_purge_gets_under_its_own_gas()
    {
        var dirty = Gauge(1) with { SupplyOxygen = VolumeConcentration.FromPartsPerMillion(30) };

        Assert.Equal(30, dirty.After(Air, 100).Value.PartsPerMillion, 1e-6);
        Assert.Equal(OutOfRange("oxygen-wanted", "0.0031", "20.95", "%"), dirty.CyclesTo(Air, O2(0.003)).Refusal);
        Assert.True(dirty.CyclesTo(Air, O2(0.0031)).IsDone);
        Assert.Equal("oxygen-before", dirty.CyclesTo(O2(0.002), O2(0.001)).Refusal?.What);
    }

    [Theory] // Crowl & Louvar; the worksheet read 3.1 from a chart
    [Check("OX-06")]
    public void Three_volumes_sweep_air_to_a_percent(Check check) =>
        check.Agrees(SweepPurge.GasFor(Litres(1), O2(21), O2(1)).Value.Liters);

    [Fact]
    public void The_gas_to_a_level_reaches_that_level() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[0.001, 20])
            .Sample(
                (space, left) =>
                {
                    var gas = SweepPurge.GasFor(Litres(space), Air, O2(left)).Value;
                    Assert.Equal(left, SweepPurge.After(Litres(space), Air, gas).Value.Percent, 1e-9);
                }
            );

    [Theory]
    [Check("OX-24")]
    public void A_pocket_of_air_is_all_that_stays(Check check) =>
        check.Agrees(SweepPurge.AfterDisplacement(Percent(1)).Value.Percent);

    [Fact]
    public void A_purge_that_cannot_be_is_refused()
    {
        Assert.Equal("pressure-high", Gauge(0).After(Air, 1).Refusal?.What);
        Assert.Equal("pressure-low", new CyclePurge(Bar(0), Bar(2)).After(Air, 1).Refusal?.What);
        Assert.Equal("cycles", Gauge(1).After(Air, -1).Refusal?.What);
        Assert.Equal("oxygen", Gauge(1).After(O2(101), 1).Refusal?.What);
        Assert.Equal("space", Gauge(1).GasOfOne(Litres(-1), Celsius(20)).Refusal?.What);
        Assert.Equal("temperature", Gauge(1).GasOfOne(Litres(1), Celsius(101)).Refusal?.What);
        Assert.Equal("supply-oxygen", (Gauge(1) with { SupplyOxygen = O2(2) }).After(Air, 1).Refusal?.What);
        Assert.Equal("oxygen-wanted", SweepPurge.GasFor(Litres(1), O2(1), O2(2)).Refusal?.What);
        Assert.Equal("space", SweepPurge.After(Litres(0), O2(1), Litres(2)).Refusal?.What);
        Assert.Equal("gas", SweepPurge.After(Litres(1), O2(1), Litres(-2)).Refusal?.What);
        Assert.Equal("unfilled", SweepPurge.AfterDisplacement(Percent(101)).Refusal?.What);
    }
}
