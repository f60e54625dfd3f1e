using Microsoft.AspNetCore.Components;
using UnitsNet;

namespace BrewFloor.Web.Drawing;

/// <summary>A jar of yeast on the fridge shelf, filled to its litres. Decoration: the litres stand beside it.</summary>
public sealed partial class Jar
{
    // A jar of one litre; others by the cube root, as jars of one make are.
    private const double LitreHeight = 62;

    private double _height;

    private double _width;

    [Parameter, EditorRequired]
    public Volume Amount { get; set; }

    /// <summary>What the jar holds; more than nothing.</summary>
    [Parameter, EditorRequired]
    public Volume Holds { get; set; }

    private MarkupString Inside
    {
        get
        {
            var (svg, neck, lid) = (new SvgText(), _height * .16, 6d);
            var (body, share) = (_height - neck - lid - 2, Math.Clamp(Amount / Holds, 0, 1));
            var (left, right, bottom) = (2d, _width - 2, _height - 2);
            svg.Filled("url(#x-yeast)", $"M{left} {bottom - (body * share)}H{right}V{bottom}H{left}z");
            svg.Path("level", $"M{left} {bottom - (body * share)}H{right}");
            svg.Path(
                "glass-wall",
                $"M{left} {bottom}V{lid + neck}l{_width * .14} {-neck}H{right - (_width * .14)}l{_width * .14} {neck}V{bottom}z"
            );
            svg.Path("lid", $"M{_width * .14} 1h{_width * .72}v{lid}h{-_width * .72}z");
            return (MarkupString)svg.ToString();
        }
    }

    protected override void OnParametersSet()
    {
        _height = LitreHeight * Math.Cbrt(Math.Clamp(Holds.Liters, .25, 4));
        _width = _height * .66;
    }
}
