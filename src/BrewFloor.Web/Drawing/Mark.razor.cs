using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>A mark beside a word, never in its place; hidden from screen readers, because the word says it.</summary>
public sealed partial class Mark
{
    [Parameter, EditorRequired]
    public MarkKind Of { get; set; }

    private MarkupString Inside => (MarkupString)MarkShapes.Of(Of);
}
