using BrewFloor.Domain.Tanks;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>The mark of a part as it stands in the drawing, on a piece of wall: the key beside its word.</summary>
public sealed partial class PartMark
{
    private const double Wall = 34;
    private const double Neck = 4;

    [Parameter, EditorRequired]
    public required Part Part { get; set; }

    private MarkupString Inside
    {
        get
        {
            var (svg, frame) = (new SvgText(), new Frame(Wall, 13, 1, 0));
            svg.Path("wall", $"M{Wall} 2V24");
            svg.Path(
                "port fitted",
                $"M{frame.P(0, -3)}L{frame.P(Neck, -3)}M{frame.P(0, 3)}L{frame.P(Neck, 3)}M{frame.P(Neck, -5)}L{frame.P(Neck, 5)}"
            );
            PartMarks.Draw(svg, frame, Part, Neck, 5, 24);
            return (MarkupString)svg.ToString();
        }
    }
}
