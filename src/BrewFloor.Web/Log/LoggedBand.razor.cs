using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>After logging: that it is on the server, and the way to strike it out at once.</summary>
public sealed partial class LoggedBand(Wording wording, TimelineLines timeline)
{
    private TimelineLine? _line;

    [Parameter, EditorRequired]
    public required Guid EntryId { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync() =>
        _line = await timeline.OneAsync(EntryId, tanks: null, Http.RequestAborted) is { IsStruck: false } line
            ? line
            : null;
}
