using BrewFloor.Brewing.Tanks;
using CsCheck;
using static BrewFloor.Brewing.Tests.Tanks.Shapes;

namespace BrewFloor.Brewing.Tests.Tanks;

public class DipTableTests
{
    private static Outcome<DipTable> Table(params (double Mm, double Litres)[] marks) =>
        DipTable.Measured(marks.Select(m => new DipPoint(Mm(m.Mm), Litres(m.Litres))));

    private static readonly DipTable Weighed = Table((100, 2), (300, 14), (600, 52)).Value;

    [Theory]
    [InlineData(100, 2)]
    [InlineData(200, 8)]
    [InlineData(300, 14)]
    [InlineData(450, 33)]
    [InlineData(600, 52)]
    public void Between_two_marks_the_line_is_straight_both_ways(double level, double litres)
    {
        Assert.Equal(litres, Weighed.VolumeAt(Mm(level)).Value.Liters, 1e-9);
        Assert.Equal(level, Weighed.LevelOf(Litres(litres)).Value.Millimeters, 1e-9);
    }

    [Fact]
    public void Nothing_is_guessed_beyond_the_marks()
    {
        Assert.Equal(new Refusal("out-of-range", "level", "100", "600", "mm"), Weighed.VolumeAt(Mm(99.9)).Refusal);
        Assert.Equal(new Refusal("out-of-range", "level", "100", "600", "mm"), Weighed.VolumeAt(Mm(600.1)).Refusal);
        Assert.Equal(new Refusal("out-of-range", "volume", "2", "52", "L"), Weighed.LevelOf(Litres(1.9)).Refusal);
        Assert.Equal(new Refusal("out-of-range", "volume", "2", "52", "L"), Weighed.LevelOf(Litres(52.1)).Refusal);
    }

    [Fact]
    public void One_mark_makes_no_table() =>
        Assert.Equal(new Refusal("too-few-points", "dip-table", "2", ""), Table((100, 2)).Refusal);

    [Fact]
    public void A_mark_that_does_not_rise_is_refused_by_its_row()
    {
        Assert.Equal(
            new Refusal("not-rising", "level", "300", "20000", "mm", 3),
            Table((100, 2), (300, 14), (300, 15)).Refusal
        );
        Assert.Equal(
            new Refusal("not-rising", "volume", "2", "6283185", "L", 2),
            Table((100, 2), (300, 2), (600, 52)).Refusal
        );
    }

    [Fact]
    public void Marks_below_nothing_and_beyond_any_tank_are_refused_by_their_row()
    {
        Assert.Equal(new Refusal("out-of-range", "level", "0", "20000", "mm", 1), Table((-1, 2), (300, 3)).Refusal);
        Assert.Equal(new Refusal("out-of-range", "level", "0", "20000", "mm", 2), Table((1, 2), (20_001, 3)).Refusal);
        Assert.Equal(new Refusal("out-of-range", "volume", "0", "6283185", "L", 1), Table((1, -2), (3, 3)).Refusal);
    }

    [Fact]
    public void Tables_of_the_same_marks_are_equal()
    {
        Assert.Equal(Weighed, Table((100, 2), (300, 14), (600, 52)).Value);
        Assert.Equal(Weighed.GetHashCode(), Table((100, 2), (300, 14), (600, 52)).Value.GetHashCode());
        Assert.NotEqual(Weighed, Table((100, 2), (300, 14), (600, 53)).Value);
    }

    [Fact]
    public void A_table_from_nothing_up_begins_at_nothing() =>
        Assert.Equal(0, Table((0, 0), (600, 52)).Value.VolumeAt(Mm(0)).Value.Liters);

    [Fact]
    public void A_table_taken_from_a_shape_agrees_with_the_shape() =>
        Gen.Select(Any, Gen.Double[0, 1])
            .Sample(
                (tank, share) =>
                {
                    const int marks = 400;
                    var table = DipTable
                        .Measured(
                            Enumerable
                                .Range(0, marks + 1)
                                .Select(i => tank.Height * Math.Min(1, (double)i / marks))
                                .Select(level => new DipPoint(level, tank.VolumeAt(level).Value))
                        )
                        .Value;
                    var level = tank.Height * share;
                    // A chord misses a curve by at most step² / 8 times its bend; here always below 0.05 % of the tank.
                    Assert.Equal(
                        tank.VolumeAt(level).Value.Liters,
                        table.VolumeAt(level).Value.Liters,
                        tank.Total.Liters * 0.0005
                    );
                },
                iter: 200
            );
}
