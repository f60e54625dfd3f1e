using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>The tank on its own page: numbers stand where they are measured, top to bottom as in the tank.</summary>
public sealed partial class TankSection
{
    private TankSketch _sketch = null!;

    private IReadOnlyList<(ReadOut ReadOut, ReadOutLine Place)> _placed = [];

    [Parameter, EditorRequired]
    public TankFigure Figure { get; set; } = null!;

    [Parameter, EditorRequired]
    public TankCondition Condition { get; set; } = null!;

    /// <summary>Five at most; further ones are not shown here but in the table of facts.</summary>
    [Parameter]
    public IReadOnlyList<ReadOut> ReadOuts { get; set; } = [];

    private string Look => Condition.IsOutOfService ? "tank big out" : "tank big";

    private double Height =>
        Math.Max(_sketch.Height, _placed.Count == 0 ? 0 : _placed[^1].Place.WordsY + (ReadOutLine.WordsHeight / 2));

    private MarkupString Inside => (MarkupString)(_sketch.Inside + Leaders());

    protected override void OnParametersSet()
    {
        _sketch = TankSketch.Of(Figure, Condition, DrawingSize.Page);
        ReadOut[] shown = [.. ReadOuts.OrderBy(r => r.Place).Take(ReadOut.Most)];
        var lines = ReadOutLine.Spread([.. shown.Select(r => _sketch.PlaceOf(r.Place))], _sketch.Height);
        _placed = [.. shown.Zip(lines)];
    }

    private string Leaders()
    {
        var svg = new SvgText();
        foreach (var (_, place) in _placed)
        {
            var bend = _sketch.Width - 16;
            svg.Path("leader", $"M{place.DotX} {place.DotY}H{bend}L{bend + 8} {place.WordsY}H{_sketch.Width + 8}");
            svg.Circle("leader-dot", place.DotX, place.DotY, 3.5);
        }

        return svg.ToString();
    }
}
