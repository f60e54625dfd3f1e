using BrewFloor.Brewing.Transfers;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Transfers;

public class TransferTests
{
    private static readonly Hose Hose = new(
        Length.FromMillimeters(12.7),
        Length.FromMeters(1),
        Length.Zero,
        Density.FromKilogramsPerCubicMeter(998.2),
        DynamicViscosity.FromMillipascalSeconds(1.002)
    );

    private static Outcome<HoseFlow> Run(double litresPerMinute, Hose hose) =>
        HoseFlow.Of(VolumeFlow.FromLitersPerMinute(litresPerMinute), hose);

    [Theory] // Darcy-Weisbach and Blasius
    [Check("TR-01")]
    public void Water_in_a_hose_costs_two_kilopascals_a_metre(Check check)
    {
        var flow = Run(10, Hose).Value;

        check.Agrees(flow.Speed.MetersPerSecond, flow.Reynolds, flow.Friction.Kilopascals);
        Assert.Equal(flow.Friction, flow.Drop);
    }

    [Theory]
    [Check("TR-05")]
    public void Twice_as_thick_costs_a_fifth_more(Check check)
    {
        var beer = Hose with { Viscosity = Hose.Viscosity * 2 };

        check.Agrees(Run(10, beer).Value.Friction / Run(10, Hose).Value.Friction);
    }

    [Fact]
    public void A_metre_up_costs_ten_kilopascals_and_a_metre_down_gives_them_back()
    {
        var (up, down) = (Hose with { Rise = Metres(1) }, Hose with { Rise = Metres(-1) });

        Assert.Equal(9.79, (Run(10, up).Value.Drop - Run(10, Hose).Value.Drop).Kilopascals, 0.01);
        Assert.Equal(
            2 * Run(10, Hose).Value.Friction.Kilopascals,
            (Run(10, up).Value.Drop + Run(10, down).Value.Drop).Kilopascals,
            1e-9
        );
    }

    [Fact] // Hagen-Poiseuille is linear in the flow
    public void Smooth_flow_costs_in_proportion() =>
        Gen.Double[0.02, 0.5]
            .Sample(flow =>
                Assert.Equal(
                    2 * Run(flow, Hose).Value.Friction.Pascals,
                    Run(2 * flow, Hose).Value.Friction.Pascals,
                    1e-9
                )
            );

    [Fact]
    public void Where_no_law_holds_it_refuses()
    {
        Assert.Equal(OutOfRange("reynolds", "4000", "100000"), Run(2, Hose).Refusal);
        Assert.Equal("reynolds", Run(100, Hose).Refusal?.What);
        Assert.Equal("flow", Run(0, Hose).Refusal?.What);
        Assert.Equal("bore", Run(10, Hose with { Bore = Length.Zero }).Refusal?.What);
        Assert.Equal("length", Run(10, Hose with { Length = Metres(201) }).Refusal?.What);
        Assert.Equal("rise", Run(10, Hose with { Rise = Metres(21) }).Refusal?.What);
        Assert.Equal("density", Run(10, Hose with { Density = Density.Zero }).Refusal?.What);
        Assert.Equal("viscosity", Run(10, Hose with { Viscosity = DynamicViscosity.Zero }).Refusal?.What);
    }

    [Theory] // our solubility
    [Check("TR-02")]
    public void A_receiver_holds_the_gas_in_the_beer(Check check)
    {
        var pressure = CounterPressure.For(Vol(2.5), Celsius(4), Sea).Value;

        check.Agrees(pressure.Least.Bars);
        Assert.Equal((0.1, 0.2), (Over(pressure.From), Over(pressure.To)));

        double Over(Pressure p) => Math.Round(p.Bars - pressure.Least.Bars, 9);
    }

    [Fact]
    public void A_flat_beer_still_gets_a_little_pressure()
    {
        var pressure = CounterPressure.For(Vol(0.5), Celsius(4), Sea).Value;

        Assert.True(pressure.Least < Pressure.Zero);
        Assert.Equal((10, 20), (pressure.From.Kilopascals, pressure.To.Kilopascals));
        Assert.Equal("temperature", CounterPressure.For(Vol(2), Celsius(41), Sea).Refusal?.What);
    }

    [Theory] // ideal gas
    [Check("TR-04")]
    public void Beer_is_pushed_by_grams(Check check) =>
        check.Agrees(PushGas.For(Litres(20), Bar(2), Celsius(4)).Value.Grams);

    [Theory] // Boyle
    [Check("TR-03")]
    public void A_sealed_receiver_becomes_a_bomb(Check check) =>
        check.Agrees(PushGas.InSealedReceiver(Litres(25), Litres(19), Bar(1.01325)).Value.Bars);

    [Fact]
    public void A_receiver_cannot_be_filled_with_its_vent_shut()
    {
        Assert.Equal(
            OutOfRange("filled", "0", "24.75", "L"),
            PushGas.InSealedReceiver(Litres(25), Litres(25), Bar(1)).Refusal
        );
        Assert.Equal("vessel", PushGas.InSealedReceiver(Litres(0), Litres(0), Bar(1)).Refusal?.What);
        Assert.Equal("volume", PushGas.For(Litres(-1), Bar(1), Celsius(4)).Refusal?.What);
        Assert.Equal("pressure-absolute", PushGas.For(Litres(1), Bar(11), Celsius(4)).Refusal?.What);
    }
}
