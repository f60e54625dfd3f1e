using BrewFloor.Web.Drawing;

namespace BrewFloor.Web.Tests.Drawing;

public sealed class GravityChartTests : BunitContext
{
    private static readonly DateTimeOffset Start = new(2026, 3, 10, 20, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_line_is_never_drawn_across_a_gap()
    {
        var panel = Panel(Read(0, 1.052), Read(12, 1.050), Read(40, 1.030), Read(52, 1.025)) with
        {
            Gaps = [new ChartGap(Start.AddHours(14), Start.AddHours(38))],
        };

        var runs = Plot(panel).Runs();

        Assert.Equal(
            [
                [1.052, 1.050],
                [1.030, 1.025],
            ],
            runs.Select(run => run.Select(r => r.Value))
        );
        Assert.Equal(2, Chart(panel).FindAll(".plot .line").Count);
    }

    [Fact]
    public void Without_a_gap_the_line_is_one()
    {
        var panel = Panel(Read(0, 1.052), Read(12, 1.050), Read(40, 1.030), Read(52, 1.025));

        Assert.Single(Plot(panel).Runs());
        Assert.Single(Chart(panel).FindAll(".plot .line"));
    }

    [Fact]
    public void A_doubtful_reading_is_hollow_and_explained_and_the_line_leaves_it_out()
    {
        var panel = Panel(
            Read(0, 1.052),
            new ChartReading(Start.AddHours(12), 1.036, true, "Far above the curve"),
            Read(24, 1.040)
        );

        var chart = Chart(panel);

        Assert.Single(chart.FindAll(".dot-in"));
        Assert.Equal("?", chart.Find(".doubt").TextContent);
        Assert.Contains("Far above the curve", chart.Find(".legend").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(1.036, Plot(panel).Runs().SelectMany(run => run).Select(r => r.Value));
    }

    [Fact]
    public void A_reading_alone_between_two_gaps_is_still_a_dot()
    {
        ChartReading[] dense = [.. Enumerable.Range(0, 80).Select(i => Read(i * .1, 1.05)), Read(30, 1.03)];
        var panel = Panel(dense) with { Gaps = [new ChartGap(Start.AddHours(9), Start.AddHours(29))] };

        Assert.Equal(1, Chart(panel).Find(".plot .dot").GetAttribute("d")!.Count(c => c == 'M'));
    }

    [Fact]
    public void The_table_holds_every_number_of_the_chart()
    {
        var chart = Chart(
            Panel(Read(0, 1.052), Read(12, 1.050), new ChartReading(Start.AddHours(20), 1.036, true, "why"))
        );

        Assert.Equal(["1.052", "1.050", "1.036 ? doubtful"], chart.FindAll("td.num").Select(cell => cell.TextContent));
        Assert.Equal("Gravity fell", chart.Find("figcaption").TextContent);
    }

    [Fact]
    public void A_higher_gravity_stands_higher_and_a_later_one_further_right()
    {
        var scale = ChartScale.Around([1.010, 1.052], Start, Start.AddHours(96), 220);

        Assert.True(scale.Y(1.052) < scale.Y(1.010));
        Assert.Equal(500, scale.X(Start.AddHours(48)), .01);
        Assert.InRange(scale.Ticks().Count(), 3, 9);
        Assert.True(scale.Low < 1.010 && scale.High > 1.052);
    }

    [Fact]
    public void A_single_reading_has_a_scale_too() =>
        Assert.InRange(ChartScale.Around([1.05], Start, Start, 220).Ticks().Count(), 2, 9);

    [Theory]
    [InlineData("0.000")]
    [InlineData("0.0")]
    [InlineData("0")]
    public void No_two_figures_of_a_scale_are_written_alike(string format)
    {
        var panel = new ChartPanel(ChartKind.Gravity, "Gravity", "", format, [Read(0, 1.0101), Read(24, 1.0104)]);

        var figures = Chart(panel).FindAll(".y span").Select(figure => figure.TextContent).ToList();

        Assert.InRange(figures.Count, 2, 9);
        Assert.Equal(figures.Distinct(StringComparer.Ordinal), figures);
    }

    private static ChartReading Read(double hours, double value) => new(Start.AddHours(hours), value);

    private static ChartPanel Panel(params ChartReading[] readings) =>
        new(ChartKind.Gravity, "Gravity", "SG", "0.000", readings);

    private static ChartPlot Plot(ChartPanel panel) =>
        new(panel, ChartScale.Around(panel.Readings.Select(r => r.Value), Start, Start.AddHours(96), panel.Height));

    private IRenderedComponent<GravityChart> Chart(ChartPanel panel) =>
        Render<GravityChart>(p =>
            p.Add(c => c.Panels, [panel])
                .Add(c => c.Now, Start.AddHours(60))
                .Add(c => c.Zone, TimeZoneInfo.Utc)
                .Add(
                    c => c.Words,
                    new ChartWords("Gravity fell", "read", "now", "no signal", "Table", "When", "doubtful")
                )
        );
}
