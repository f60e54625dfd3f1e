using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>What is in the tank and how it is, in words.</summary>
public sealed partial class BayHead(Wording wording)
{
    [Parameter, EditorRequired]
    public required Bay Bay { get; set; }
}
