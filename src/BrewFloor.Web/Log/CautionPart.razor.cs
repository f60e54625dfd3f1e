using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>What can hurt somebody in this step, before the step. That it was shown is kept with the entry.</summary>
public sealed partial class CautionPart(Wording wording)
{
    [Parameter, EditorRequired]
    public required IEnumerable<string> Keys { get; set; }
}
