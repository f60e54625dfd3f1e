using BrewFloor.Web.Drawing;

namespace BrewFloor.Web.Tests.Drawing;

public sealed class MarkTests : BunitContext
{
    [Fact]
    public void Every_mark_is_drawn_and_no_two_are_alike()
    {
        var shapes = Enum.GetValues<MarkKind>()
            .Select(kind => Render<Mark>(p => p.Add(m => m.Of, kind)).Markup)
            .ToList();

        Assert.Equal(shapes.Count, shapes.Distinct().Count());
        Assert.All(shapes, shape => Assert.Contains("aria-hidden=\"true\"", shape, StringComparison.Ordinal));
    }

    [Fact]
    public void Marks_carry_no_colour_of_their_own() =>
        Assert.All(Enum.GetValues<MarkKind>(), kind => Assert.DoesNotMatch("#[0-9a-f]{3}", MarkShapes.Of(kind)));

    [Fact]
    public void A_plate_leads_somewhere_or_is_plain()
    {
        Assert.Equal("SPAN", Render<Plate>(p => p.Add(x => x.Code, "K3")).Find(".plate").TagName);
        Assert.Equal(
            "/tanks/K3",
            Render<Plate>(p => p.Add(x => x.Code, "K3").Add(x => x.Href, "/tanks/K3"))
                .Find("a.plated")
                .GetAttribute("href")
        );
    }
}
