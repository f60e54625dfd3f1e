using BrewFloor.Brewing.Tanks;
using CsCheck;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;
using static BrewFloor.Brewing.Tests.Tanks.Shapes;

namespace BrewFloor.Brewing.Tests.Tanks;

public class ContentsTests
{
    private static readonly string[] Few = ["DN 10", "DN 25", "DN 50", "DN 65", "DN 80", "DN 100"];

    private static Ferrule Dn(int nominal) =>
        Ferrule.Din.Single(f => f.Name.Equals($"DN {nominal}", StringComparison.Ordinal));

    [Fact] // 10 kg of water at 20 °C are 10.018 L
    public void Weighed_water_makes_a_dip_table()
    {
        var table = WeighedDips
            .From([new(Mm(100), Kg(10)), new(Mm(200), Kg(20)), new(Mm(300), Kg(40))], Celsius(20))
            .Value;

        Assert.Equal(10.018, table.VolumeAt(Mm(100)).Value.Liters, 0.001);
        Assert.Equal(30.054, table.VolumeAt(Mm(250)).Value.Liters, 0.001);
        Assert.Equal("temperature", WeighedDips.From([], Celsius(61)).Refusal?.What);
        Assert.Equal("too-few-points", WeighedDips.From([], Celsius(20)).Refusal?.Code);
        Assert.Equal(2, WeighedDips.From([new(Mm(1), Kg(2)), new(Mm(2), Kg(1))], Celsius(20)).Refusal?.Row);
    }

    [Fact]
    public void A_tank_is_sediment_and_beer_and_ullage() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1])
            .Sample(
                (a, b) =>
                {
                    var height = Conical.Height.Millimeters;
                    var contents = Contents.Of(Conical, Mm(height * Math.Min(a, b)), Mm(height * Math.Max(a, b))).Value;
                    var all = contents.Sediment + contents.Beer + contents.Ullage;
                    Assert.Equal(Conical.Total.Liters, all.Liters, 1e-9);
                    Assert.Equal(contents.Sediment.Liters, 10 * contents.SedimentPlusMinus.Liters, 1e-9);
                }
            );

    [Fact]
    public void Beer_below_its_sediment_is_refused()
    {
        Assert.Equal("surface-level", Contents.Of(Conical, Mm(200), Mm(100)).Refusal?.What);
        Assert.Equal("sediment-level", Contents.Of(Conical, Mm(-1), Mm(100)).Refusal?.What);
        Assert.Equal("level", Contents.Of(Conical, Mm(1), Mm(1000)).Refusal?.What);
    }

    [Theory] // DIN 32676
    [Check("GE-11")]
    public void Three_clamps_of_the_standard(Check check) =>
        Assert.Equal(
            check.Expected,
            string.Join(
                " / ",
                new[] { Dn(25), Dn(40), Dn(50) }.Select(f =>
                    FormattableString.Invariant($"{f.Tube.Millimeters}x{f.Wall.Millimeters}")
                )
            ) + " mm"
        );

    [Theory] // DIN 32676
    [Check("GE-21")]
    public void All_clamps_of_the_standard(Check check) =>
        check.Agrees([.. Ferrule.Din.Select(f => f.Tube.Millimeters)]);

    [Theory] // DIN 32676
    [Check("GE-22")]
    public void Wide_clamps_bear_less(Check check) => check.Agrees(Dn(50).Rated!.Value.Bars, Dn(65).Rated!.Value.Bars);

    [Theory] // from memory
    [Check("GE-23")]
    public void Flanges(Check check) =>
        check.Agrees([.. Ferrule.Din.Where(f => Few.Contains(f.Name)).Select(f => f.Flange.Millimeters)]);

    [Fact]
    public void One_clamp_holds_two_bores_with_a_step_between()
    {
        Assert.True(Dn(25).ClampsTo(Dn(40)));
        Assert.False(Dn(25).IsFlushWith(Dn(40)));
        Assert.True(Dn(40).IsFlushWith(Dn(40)));
        Assert.False(Dn(40).ClampsTo(Dn(50)));
        Assert.Equal(38, Dn(40).Bore.Millimeters, 1e-9);
    }
}
