using System.Globalization;
using System.Text.RegularExpressions;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Drawing;
using UnitsNet;

namespace BrewFloor.Web.Tests.Drawing;

public sealed partial class PortsSketchTests
{
    private static readonly Port Side = new(1, "Side", PortPlace.Side)
    {
        Clamp = Clamp.OneAndAHalfInch,
        Height = Length.FromMillimeters(700),
    };

    private static string Drawn(params MountedPort[] ports) => PortsSketch.Of(Tanks.Conical, ports).Inside;

    private static string Alone(Port port, Fitting? fitting = null) =>
        Drawn(new MountedPort(port, fitting)).Replace(Drawn(), "", StringComparison.Ordinal);

    [Fact]
    public void Every_part_has_a_shape_of_its_own_without_any_colour()
    {
        var shapes = Enum.GetValues<Part>().Select(part => Alone(Side, new Fitting(1, part))).ToArray();

        Assert.Equal(shapes.Length, shapes.Distinct(StringComparer.Ordinal).Count());
        Assert.All(shapes, shape => Assert.DoesNotContain("fill=", shape, StringComparison.Ordinal));
    }

    [Fact]
    public void A_port_stands_as_high_as_it_was_measured()
    {
        var sketch = PortsSketch.Of(Tanks.Conical, []);
        var (low, high) = (StartOf(Alone(Side)), StartOf(Alone(Side with { Height = Length.FromMillimeters(900) })));

        // From floor to rim the drawing is as high as the tank on its legs.
        var scale = (sketch.Height - 64 - 3) / (Tanks.Conical.Shape.Height + Tanks.Conical.Legs).Millimeters;
        Assert.Equal(200 * scale, low.Y - high.Y, 0.2);
    }

    [Fact]
    public void Right_and_left_are_told_apart_and_what_nobody_measured_is_dashed()
    {
        var left = StartOf(Alone(Side with { Around = Angle.FromDegrees(270) }));

        Assert.True(left.X < StartOf(Alone(Side)).X);
        Assert.Contains("guessed", Alone(Side with { Height = null }), StringComparison.Ordinal);
        Assert.DoesNotContain("guessed", Alone(Side), StringComparison.Ordinal);
    }

    [Fact]
    public void In_front_and_behind_a_port_is_seen_from_its_face()
    {
        Assert.Contains("<circle", Alone(Side with { Around = Angle.FromDegrees(0) }), StringComparison.Ordinal);
        Assert.Contains("behind", Alone(Side with { Around = Angle.FromDegrees(180) }), StringComparison.Ordinal);
        Assert.DoesNotContain("<circle", Alone(Side), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reducer_is_drawn_between_port_and_part()
    {
        Fitting gauge = new(1, Part.Gauge) { Clamp = Clamp.OneAndAHalfInch };

        Assert.NotEqual(
            Alone(Side, gauge),
            Alone(Side, gauge with { Through = new(Clamp.ThreeInch, Clamp.OneAndAHalfInch) })
        );
    }

    [Fact]
    public void Numbers_that_would_meet_are_moved_apart()
    {
        Assert.Equal([10, 27, 44], PortsSketch.Apart([10, 11, 12], 17, 8, 300));
        Assert.Equal([8, 200], PortsSketch.Apart([2, 200], 17, 8, 300));
        Assert.Equal([266, 283, 300], PortsSketch.Apart([290, 295, 299], 17, 8, 300));
    }

    [Fact]
    public void A_tank_drawn_by_a_dip_table_shows_its_ports_too() =>
        Assert.All(
            Tanks.All,
            figure =>
                Assert.Matches(
                    NumberOne(),
                    PortsSketch
                        .Of(
                            figure,
                            [
                                .. Enum.GetValues<PortPlace>()
                                    .Select((place, index) => new MountedPort(new(index + 1, "P", place), null)),
                            ]
                        )
                        .Inside
                )
        );

    private static (double X, double Y) StartOf(string markup)
    {
        var at = Start().Match(markup);
        return (
            double.Parse(at.Groups["x"].ValueSpan, CultureInfo.InvariantCulture),
            double.Parse(at.Groups["y"].ValueSpan, CultureInfo.InvariantCulture)
        );
    }

    [GeneratedRegex("d=\"M(?<x>[-0-9.]+) (?<y>[-0-9.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Start();

    [GeneratedRegex("<text class=\"no\"[^>]*>1</text>", RegexOptions.None, 1000)]
    private static partial Regex NumberOne();
}
