using BrewFloor.Web.Drawing;
using UnitsNet;
using static BrewFloor.Web.Tests.Drawing.Tanks;

namespace BrewFloor.Web.Tests.Drawing;

public sealed class RulerTests : BunitContext
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(9, 25)]
    [InlineData(36, 100)]
    [InlineData(50, 100)]
    [InlineData(-3, 0)]
    public void A_value_stands_where_it_is_and_beyond_the_ruler_at_its_end(double hours, double percent) =>
        Assert.Equal(percent, new RulerScale(0, 36).PercentOf(hours), .001);

    [Fact]
    public void What_is_not_allowed_is_hatched_on_its_side_of_the_limit()
    {
        Assert.Equal("--x:75%;--w:25%", Hatched(isLeast: false));
        Assert.Equal("--x:0%;--w:75%", Hatched(isLeast: true));
    }

    [Fact]
    public void Without_a_limit_nothing_is_hatched() =>
        Assert.Empty(Render<Ruler>(p => p.Add(r => r.To, 36).Add(r => r.Step, 1)).FindAll(".past"));

    [Fact]
    public void Words_beside_the_tank_never_lie_on_each_other()
    {
        var lines = ReadOutLine.Spread([(10, 20), (10, 22), (10, 190), (10, 200), (10, 398)], 400);

        Assert.All(
            lines.Zip(lines.Skip(1)),
            pair => Assert.True(pair.Second.WordsY - pair.First.WordsY >= ReadOutLine.WordsHeight - .01)
        );
        Assert.True(lines[^1].WordsY <= 400 - (ReadOutLine.WordsHeight / 2));
    }

    [Fact]
    public void A_tank_page_shows_five_read_outs_at_most_from_top_to_bottom()
    {
        var section = Render<TankSection>(p =>
            p.Add(s => s.Figure, PressureConical)
                .Add(s => s.Condition, Fermenting)
                .Add(
                    s => s.ReadOuts,
                    [
                        .. Enum.GetValues<ReadOutPlace>()
                            .Reverse()
                            .Select(place => new ReadOut(place, place.ToString(), "1 L", "")),
                    ]
                )
        );

        Assert.Equal(
            ["Gauge", "Headspace", "Level", "Beer", "Thermowell"],
            section.FindAll("dt").Select(name => name.TextContent)
        );
        Assert.Equal(5, section.FindAll(".leader").Count);
    }

    [Fact]
    public void A_jar_is_filled_to_its_litres()
    {
        double Level(double litres) =>
            double.Parse(
                Render<Jar>(p => p.Add(j => j.Amount, L(litres)).Add(j => j.Holds, Volume.FromLiters(2)))
                    .Find(".level")
                    .GetAttribute("d")!
                    .Split('H')[0]
                    .Split(' ')[1],
                System.Globalization.CultureInfo.InvariantCulture
            );

        Assert.Equal(Level(0) - Level(2), 2 * (Level(0) - Level(1)), .3);
        Assert.True(Level(0) - Level(2) > 20);
    }

    private string Hatched(bool isLeast) =>
        Render<Ruler>(p =>
                p.Add(r => r.From, 0)
                    .Add(r => r.To, 36)
                    .Add(r => r.Step, 1)
                    .Add(r => r.Limit, new RulerPlace(27, "27 h"))
                    .Add(r => r.IsLeast, isLeast)
            )
            .Find(".past")
            .GetAttribute("style")!;
}
