using System.Globalization;
using System.Text.RegularExpressions;
using BrewFloor.Web.Drawing;
using UnitsNet;
using static BrewFloor.Web.Tests.Drawing.Tanks;

namespace BrewFloor.Web.Tests.Drawing;

public sealed partial class TankSketchTests
{
    public static TheoryData<int> EveryTank => [.. Enumerable.Range(0, All.Count)];

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(20)]
    [InlineData(90)]
    public void Beer_in_a_conical_stands_as_high_as_its_litres_reach(double litres)
    {
        var sketch = TankSketch.Of(Conical, new TankCondition { Volume = L(litres) }, new DrawingSize(400));
        var floor = sketch.Height - 3;

        var level = (floor - LevelOf(sketch)) / sketch.Scale - Conical.Legs.Millimeters;

        Assert.Equal(litres, LitresInTheCone(level), litres * .02 + .1);
    }

    [Fact]
    public void Litres_lie_further_apart_in_the_cone_than_in_the_cylinder()
    {
        double LevelAt(double litres) =>
            LevelOf(TankSketch.Of(Conical, new TankCondition { Volume = L(litres) }, new DrawingSize(400)));

        Assert.True(LevelAt(5) - LevelAt(10) > 2 * (LevelAt(90) - LevelAt(95)));
    }

    [Fact]
    public void Every_soil_state_has_a_shape_of_its_own_without_any_colour() =>
        AllDiffer(Enum.GetValues<DrawnSoil>(), soil => new TankCondition { Soil = soil });

    [Theory]
    [InlineData(6)]
    [InlineData(78)]
    public void Every_stage_has_a_texture_of_its_own_without_any_colour(double ebc) =>
        AllDiffer(Enum.GetValues<DrawnStage>(), stage => Fermenting with { Stage = stage, ColourEbc = ebc });

    [Fact]
    public void Bubbles_are_as_dense_as_the_gravity_falls_fast() =>
        AllDiffer(Enum.GetValues<DrawnVigour>(), vigour => Fermenting with { Vigour = vigour });

    [Fact]
    public void Every_sediment_has_a_texture_of_its_own_without_any_colour() =>
        AllDiffer(
            Enum.GetValues<SedimentKind>(),
            kind => Fermenting with { Sediment = [new DrawnSediment(kind, L(3))] }
        );

    [Fact]
    public void The_check_for_shapes_can_fail()
    {
        // Two beers of different colour and nothing else: without colours they are one drawing.
        Assert.ThrowsAny<Exception>(() => AllDiffer([6d, 9d], ebc => Fermenting with { ColourEbc = ebc }));
    }

    [Fact]
    public void Every_texture_a_drawing_asks_for_is_on_the_page()
    {
        using var page = new BunitContext();
        var defs = page.Render<DrawingDefs>().Markup;
        var conditions =
            from stage in Enum.GetValues<DrawnStage>()
            from vigour in Enum.GetValues<DrawnVigour>()
            from ebc in new[] { 6d, 78 }
            select Fermenting with
            {
                Stage = stage,
                Vigour = vigour,
                ColourEbc = ebc,
            };
        var empty = Enum.GetValues<DrawnSoil>().Select(soil => new TankCondition { Soil = soil });
        var asked = conditions
            .Concat(empty)
            .SelectMany(condition => Reference().Matches(Small(condition)).Select(match => match.Groups["it"].Value))
            .Distinct()
            .ToList();

        Assert.True(asked.Count > 8);
        Assert.All(asked, id => Assert.Contains($"id=\"{id}\"", defs, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(EveryTank))]
    public void A_drawing_in_a_list_is_small(int tank)
    {
        var figure = All[tank];
        using var page = new BunitContext();
        var markup = page.Render<TankDrawing>(p =>
            p.Add(d => d.Figure, figure).Add(d => d.Condition, Fermenting with { Volume = figure.Working!.Value * .8 })
        ).Markup;

        Assert.InRange(markup.Length, 300, 1900);
    }

    [Fact]
    public void Two_hundred_tanks_on_one_page_share_no_id()
    {
        using var page = new BunitContext();
        var ids = Enumerable
            .Range(0, 200)
            .Select(i =>
                page.Render<TankDrawing>(p =>
                    p.Add(d => d.Figure, All[i % All.Count]).Add(d => d.Condition, Fermenting)
                ).Markup
            )
            .Append(page.Render<DrawingDefs>().Markup)
            .SelectMany(markup => Id().Matches(markup).Select(match => match.Groups["it"].Value))
            .ToList();

        Assert.NotEmpty(ids);
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public void No_reading_no_needle()
    {
        Assert.DoesNotContain("needle", Gauge(null), StringComparison.Ordinal);
        Assert.Contains("needle", Gauge(Pressure.Zero), StringComparison.Ordinal);
        Assert.Contains("class=\"stop\"", Gauge(null), StringComparison.Ordinal);
    }

    [Fact]
    public void The_needle_points_at_the_red_stop_at_what_is_allowed_and_beside_it_below()
    {
        Assert.Equal(0, FromNeedleToStop(PressureConical.Allowed!.Value), .05);
        Assert.True(FromNeedleToStop(PressureConical.Allowed.Value / 2) > 1);
    }

    [Fact]
    public void An_unknown_volume_shows_a_question_mark_and_no_beer()
    {
        var markup = Small(Fermenting with { IsVolumeUnknown = true });

        Assert.Contains(">?<", markup, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"level\"", markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tank_out_of_service_is_crossed_whatever_is_in_it()
    {
        Assert.Contains("out-cross", Small(Fermenting with { IsOutOfService = true }), StringComparison.Ordinal);
        Assert.DoesNotContain("out-cross", Small(Fermenting), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_large_drawings_carry_the_litre_scale()
    {
        Assert.DoesNotContain("<text", Small(Fermenting), StringComparison.Ordinal);
        Assert.Contains(
            ">100</text>",
            TankSketch.Of(Conical, Fermenting, new DrawingSize(400)).Inside,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void On_a_desk_all_tanks_stand_at_one_scale()
    {
        var floor = FloorScale.Of(All);

        var scales = All.Select(figure =>
        {
            using var page = new BunitContext();
            var svg = page.Render<TankDrawing>(p =>
                    p.Add(d => d.Figure, figure).Add(d => d.Condition, Fermenting).Add(d => d.Floor, floor)
                )
                .Find("svg");
            var numbers = Numbers().Matches(svg.GetAttribute("style")!);
            return TankSketch.Of(figure, Fermenting, floor.SizeOf(figure)).Scale * N(numbers[1]) / N(numbers[0]);
        });

        Assert.All(scales, scale => Assert.Equal(180 / floor.TallestMm, scale, .002));
    }

    [Fact]
    public void Alone_a_drawing_says_one_sentence_and_beside_words_it_is_silent()
    {
        using var page = new BunitContext();
        var alone = page.Render<TankDrawing>(p => p.Add(d => d.Figure, Conical).Add(d => d.Sentence, "K3 holds 98 L"))
            .Find("svg");
        var beside = page.Render<TankDrawing>(p => p.Add(d => d.Figure, Conical)).Find("svg");

        Assert.Equal(
            ("img", "K3 holds 98 L", null),
            (alone.GetAttribute("role"), alone.GetAttribute("aria-label"), alone.GetAttribute("aria-hidden"))
        );
        Assert.Equal((null, "true"), (beside.GetAttribute("role"), beside.GetAttribute("aria-hidden")));
    }

    [Fact]
    public void Numbers_are_written_alike_in_every_language()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var german = Small(Fermenting);
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            Assert.Equal(Small(Fermenting), german);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void AllDiffer<T>(IReadOnlyCollection<T> states, Func<T, TankCondition> condition)
    {
        var shapes = states.Select(state => Colour().Replace(Small(condition(state)), "")).Distinct();
        Assert.Equal(states.Count, shapes.Count());
    }

    private static string Small(TankCondition condition) => TankSketch.Of(Conical, condition, DrawingSize.Small).Inside;

    private static string Gauge(Pressure? pressure) =>
        TankSketch.Of(PressureConical, new TankCondition { Pressure = pressure }, new DrawingSize(400)).Inside;

    // The angle between them, seen from the middle of the dial.
    private static double FromNeedleToStop(Pressure pressure)
    {
        var needle = Numbers().Matches(PathOf(Gauge(pressure), "needle"));
        var stop = Numbers().Matches(PathOf(Gauge(pressure), "stop"));
        double Angle(Match x, Match y) => Math.Atan2(N(y) - N(needle[1]), N(x) - N(needle[0]));
        return Math.Abs(Math.IEEERemainder(Angle(needle[2], needle[3]) - Angle(stop[0], stop[1]), 2 * Math.PI));
    }

    private static double LevelOf(TankSketch sketch) => N(Numbers().Matches(PathOf(sketch.Inside, "level"))[1]);

    private static string PathOf(string markup, string look) =>
        Regex
            .Match(
                markup,
                $"class=\"{look}\" d=\"(?<it>[^\"]+)\"",
                RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(1)
            )
            .Groups["it"]
            .Value;

    // By hand, apart from the product's own geometry: a cone of 60 degrees under a cylinder of 520 mm.
    private static double LitresInTheCone(double mm)
    {
        const double Outlet = 19;
        var cone = (260 - Outlet) / Math.Tan(Math.PI / 6);
        var wet = Math.Min(mm, cone);
        var radius = Outlet + (wet * Math.Tan(Math.PI / 6));
        var below = Math.PI * wet / 3 * ((Outlet * Outlet) + (Outlet * radius) + (radius * radius));
        return (below + (Math.PI * 260 * 260 * Math.Max(0, mm - cone))) / 1e6;
    }

    private static double N(Match match) => double.Parse(match.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("#[0-9a-f]{6}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Colour();

    [GeneratedRegex("url\\(#(?<it>[a-z-]+)\\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reference();

    [GeneratedRegex(" id=\"(?<it>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Id();

    [GeneratedRegex("-?[0-9]+(\\.[0-9]+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Numbers();
}
