using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>The state of a tank: its mark and its words.</summary>
public sealed partial class BayState(Wording wording)
{
    [Parameter, EditorRequired]
    public required Bay Bay { get; set; }
}
