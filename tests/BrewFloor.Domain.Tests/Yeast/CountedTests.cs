using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Yeast;

public class CountedTests
{
    // 120 cells in five of the twenty-five small squares is 120 in a fifth of a large one: 600 in a whole one.
    // Diluted a hundredfold: 6.00e8 in a millilitre (docs/science, check YE-01).
    [Theory]
    [InlineData(1, 100, 600, 0, 6.00e8, 1)]
    [InlineData(4, 100, 380, 20, 1.00e8, 0.95)] // 400 cells in four squares
    [InlineData(4, 1, 0, 400, 1.00e6, 0)] // all dead is a count too
    public void Cells_in_a_millilitre_and_their_living_share(
        int squares,
        double dilution,
        int live,
        int dead,
        double cells,
        double viability
    )
    {
        var count = Assert.Single(After(Slurry, new(Slurry.Id, squares, dilution, live, dead)).Counts);

        Assert.Equal(cells, count.CellsPerMilliliter!.Value, cells * 1e-12);
        Assert.Equal(viability, count.Viability, 1e-12);
    }

    [Fact]
    public void A_weighed_pack_has_a_living_share_but_no_cells_in_a_millilitre() =>
        Assert.Equal(
            (0.95, null),
            Assert.Single(After(Pack, new(Pack.Id, 4, 100, 380, 20)).Counts) is var c
                ? (c.Viability, c.CellsPerMilliliter)
                : default
        );

    [Theory]
    [InlineData(4, 100, 0, 0)] // an empty chamber says nothing
    [InlineData(0, 100, 380, 20)]
    [InlineData(4, 0.5, 380, 20)] // diluted to less than itself
    [InlineData(4, 100, -1, 20)]
    public void What_cannot_be_read_is_refused_and_never_folded(int squares, double dilution, int live, int dead)
    {
        var counted = On(1, new Counted(Slurry.Id, squares, dilution, live, dead));

        Assert.Equal(["no-cells"], counted.JudgedOn(TheFloor()).Codes());
        Assert.Empty(After(Slurry, counted).Counts);
    }

    [Fact]
    public void A_jar_remembers_its_last_fifty_counts() =>
        Assert.Equal(
            50,
            TheFloor()
                .After([.. Enumerable.Range(0, 60).Select(day => On(day, new Counted(Slurry.Id, 4, 1, 90, 10)))])
                .Of(Slurry)
                .Counts.Count
        );

    private static CultureState After(Culture culture, Counted counted) =>
        TheFloor().After(On(0, Received(Pack, Grams(11.5))), On(0, Fridge(Slurry, 1)), On(1, counted)).Of(culture);
}
