using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>A tank as SVG. The page needs <see cref="DrawingDefs"/> once.</summary>
public sealed partial class TankDrawing
{
    private TankSketch _sketch = null!;

    [Parameter, EditorRequired]
    public TankFigure Figure { get; set; } = null!;

    /// <summary>Left out: the silhouette alone, as on labels.</summary>
    [Parameter]
    public TankCondition? Condition { get; set; }

    [Parameter]
    public DrawingSize Size { get; set; } = DrawingSize.Small;

    /// <summary>On the floor, in place of a size: the scale of all tanks there.</summary>
    [Parameter]
    public FloorScale? Floor { get; set; }

    /// <summary>What the drawing says, in one sentence, where no words beside it say the same. Left out: decoration.</summary>
    [Parameter]
    public string? Sentence { get; set; }

    private string Look =>
        $"tank{(_sketch.IsLarge ? " big" : "")}{(Condition is { IsOutOfService: true } ? " out" : "")}";

    private string Width => Px.Of(_sketch.Width);

    private string Height => Px.Of(_sketch.Height);

    private MarkupString Inside => (MarkupString)_sketch.Inside;

    // One drawing in two sizes: on the desk all bodies stand at one scale.
    private string? Sizes =>
        Floor is { } floor ? $"--pw:{Width};--dw:{Px.Of(_sketch.Width * floor.DeskScale / _sketch.Scale)}" : null;

    protected override void OnParametersSet()
    {
        var size = Floor?.SizeOf(Figure) ?? Size;
        _sketch = Condition is null ? TankSketch.OutlineOf(Figure, size) : TankSketch.Of(Figure, Condition, size);
    }
}
