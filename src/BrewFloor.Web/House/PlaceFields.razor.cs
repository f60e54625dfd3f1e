using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>By which clock a place lives and how high it lies, as its form asks.</summary>
public sealed partial class PlaceFields(Wording wording)
{
    [Parameter, EditorRequired]
    public required string? Zone { get; set; }

    /// <summary>In m, as typed.</summary>
    [Parameter, EditorRequired]
    public required string? Altitude { get; set; }

    /// <summary>What another zone changes, where it is changed.</summary>
    [Parameter]
    public string? ZoneNote { get; set; }
}
