using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Labels;

/// <summary>In place of labels that would lead nowhere: the floor's address isn't known yet.</summary>
public sealed partial class LabelsWait(Wording wording)
{
    [CascadingParameter]
    public required HttpContext Http { get; set; }
}
