using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>A tank's ports and what is on them, drawn; the list beside it says the same in words, by the same numbers.</summary>
public sealed partial class PortsDrawing
{
    private PortsSketch _sketch = null!;

    [Parameter, EditorRequired]
    public required TankFigure Figure { get; set; }

    [Parameter, EditorRequired]
    public required IReadOnlyList<MountedPort> Ports { get; set; }

    protected override void OnParametersSet() => _sketch = PortsSketch.Of(Figure, Ports);
}
