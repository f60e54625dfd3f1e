using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Jobs;

/// <summary>Jobs of one tank, batch or culture, the most pressing first.</summary>
public sealed partial class JobList
{
    [Parameter, EditorRequired]
    public required IReadOnlyList<ShownJob> Jobs { get; set; }

    [Parameter, EditorRequired]
    public required DateTimeOffset Now { get; set; }

    [Parameter]
    public string? Heading { get; set; }
}
