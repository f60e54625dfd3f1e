using BrewFloor.Brewing.Extract;
using CsCheck;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class SugarTableTests
{
    private static readonly double[][] Sugar = Table.Read("sugar-nbs440.csv");

    [Fact] // NBS Circular 440, Table 114
    public void Every_line_of_the_printed_table_is_met_within_a_hundredth_of_a_degree()
    {
        Assert.Equal(41, Sugar.Length);
        Assert.All(Sugar, row => Assert.Equal(row[0], DegreesPlato.From(Sg(row[1])).Value.Value, 0.01));
    }

    [Fact]
    public void Every_line_of_the_printed_table_is_met_backwards() =>
        Assert.All(Sugar, row => Assert.Equal(row[1], Plato(row[0]).ToGravity().Value.Value, 0.0001));

    [Fact]
    public void The_join_of_the_two_tables_is_not_felt()
    {
        var (below, above) = (DegreesPlato.From(Sg(1.083)).Value.Value, DegreesPlato.From(Sg(1.08301)).Value.Value);

        Assert.InRange(above - below, 0, 0.01);
    }

    [Fact]
    public void Heavier_is_always_stronger() =>
        Gen.Select(Gen.Int[-500, 17_899], Gen.Int[1, 500])
            .Where((start, more) => start + more <= 17_900)
            .Sample(
                (start, more) =>
                    DegreesPlato.From(Sg(1 + (start * 1e-5))).Value
                    < DegreesPlato.From(Sg(1 + ((start + more) * 1e-5))).Value
            );

    [Fact]
    public void There_and_back_closes_over_the_whole_range() =>
        Gen.Int[-500, 17_900]
            .Sample(steps =>
            {
                var gravity = Sg(1 + (steps * 1e-5));
                Assert.Equal(gravity, DegreesPlato.From(gravity).Value.ToGravity().Value);
            });

    [Fact] // IAPWS-95
    public void Water_weighs_what_the_steam_tables_say() =>
        Assert.All(
            Table.Read("water-iapws95.csv"),
            row => Assert.Equal(row[1], WaterDensity.At(Celsius(row[0])).Value.KilogramsPerCubicMeter, 0.015)
        );
}
