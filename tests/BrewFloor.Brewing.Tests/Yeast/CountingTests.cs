using BrewFloor.Brewing.Yeast;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Yeast;

public class CountingTests
{
    private static Outcome<YeastCount> Count(int cells, int squares = 5, double dilution = 100, double error = 0) =>
        CountingChamber.Of(cells, CountingGrid.Neubauer(squares), dilution, Percent(error));

    [Theory] // Neubauer's geometry, ASBC Yeast-4 arithmetic; Poisson
    [Check("YE-01")]
    public void Five_squares_of_twenty_five(Check check)
    {
        var count = Count(120).Value;

        (check with { Tolerance = "0.1; 0.1" }).Agrees(count.Density.PerMillilitre, count.CountingError.Percent);
    }

    [Fact]
    public void Twice_the_cells_in_twice_the_squares_is_the_same_yeast_better_known() =>
        Gen.Int[1, 1000]
            .Sample(cells =>
            {
                var (few, many) = (Count(cells, 4, 10).Value, Count(2 * cells, 8, 10).Value);
                Assert.Equal(few.Density.PerMillilitre, many.Density.PerMillilitre, few.Density.PerMillilitre * 1e-12);
                Assert.Equal(few.CountingError.Percent, many.CountingError.Percent * Math.Sqrt(2), 1e-9);
            });

    [Fact]
    public void Any_grid_will_do()
    {
        var other = new CountingGrid(16, Area.FromSquareMillimeters(0.0625), Length.FromMillimeters(0.1));

        Assert.Equal(
            Count(100, 25).Value.Density.PerMillilitre,
            CountingChamber.Of(100, other, 100, Percent(0)).Value.Density.PerMillilitre,
            1
        );
    }

    [Fact]
    public void Diluting_adds_to_the_error() => Assert.Equal(13.5, Count(120, error: 10).Value.PlusMinus.Percent, 0.1);

    [Fact]
    public void A_count_that_cannot_be_is_refused()
    {
        Assert.Equal(OutOfRange("cells", "1", "100000"), Count(0).Refusal);
        Assert.Equal("squares", Count(100, 0).Refusal?.What);
        Assert.Equal("dilution", Count(100, dilution: 0.5).Refusal?.What);
        Assert.Equal("dilution-error", Count(100, error: 51).Refusal?.What);
        Assert.Equal("cell-density", Count(1000, dilution: 1000).Refusal?.What); // 5e10: more than can be packed
        Assert.Equal("square-area", Grid(0, 0.1)?.What);
        Assert.Equal("depth", Grid(0.04, 2)?.What);
    }

    [Theory] // Wilson 1927
    [Check("YE-02")]
    public void Four_hundred_cells_leave_two_percent_open(Check check)
    {
        var living = LivingShare.Of(380, 400).Value;

        check.Agrees(living.Likely.Percent, living.Low.Percent, living.High.Percent);
    }

    [Theory] // Wilson 1927
    [Check("YE-25")]
    public void No_living_cell_among_fifty_is_no_proof(Check check)
    {
        var living = LivingShare.Of(0, 50).Value;

        check.Agrees(living.Low.Percent, living.High.Percent);
    }

    [Theory] // MEBAK M-350
    [Check("YE-07")]
    public void Dead_cells_by_mebak(Check check)
    {
        Assert.Equal("target < 2 % dead; exclude from 5 %", check.Expected);
        (check with { Tolerance = "0" }).Agrees(LivingShare.DeadTarget.Percent, LivingShare.DeadExcluded.Percent);
        Assert.Equal(DeadCellVerdict.OnTarget, LivingShare.Of(981, 1000).Value.Verdict);
        Assert.Equal(DeadCellVerdict.Tolerable, LivingShare.Of(979, 1000).Value.Verdict);
        Assert.Equal(DeadCellVerdict.Excluded, LivingShare.Of(950, 1000).Value.Verdict);
    }

    [Fact]
    public void More_counting_narrows_the_interval_and_it_holds_the_share() =>
        Gen.Select(Gen.Int[1, 500], Gen.Int[0, 500])
            .Where((n, x) => x <= n)
            .Sample(
                (n, x) =>
                {
                    var (one, four) = (LivingShare.Of(x, n).Value, LivingShare.Of(4 * x, 4 * n).Value);
                    Assert.InRange(one.Likely.Percent, one.Low.Percent - 1e-9, one.High.Percent + 1e-9);
                    Assert.True((four.High - four.Low).Percent < (one.High - one.Low).Percent);
                }
            );

    [Fact]
    public void More_living_than_counted_is_refused()
    {
        Assert.Equal(OutOfRange("living", "0", "400"), LivingShare.Of(401, 400).Refusal);
        Assert.Equal("counted", LivingShare.Of(0, 0).Refusal?.What);
    }

    private static Refusal? Grid(double area, double depth) =>
        CountingChamber
            .Of(1, new CountingGrid(1, Area.FromSquareMillimeters(area), Length.FromMillimeters(depth)), 1, Percent(0))
            .Refusal;
}
