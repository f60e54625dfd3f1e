using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>One tank on the floor: its drawing, its plate, what is in it, how it is, what is next. The whole row is one target.</summary>
public sealed partial class BayRow(Wording wording)
{
    [Parameter, EditorRequired]
    public required Bay Bay { get; set; }

    [Parameter, EditorRequired]
    public required FloorScale Scale { get; set; }
}
