using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>The head of a page: what it is, how old it is, and one press to sunlight.</summary>
public sealed partial class PageHead(Wording wording, TimeProvider clock)
{
    /// <summary>In the browser's tab.</summary>
    [Parameter, EditorRequired]
    public required string Title { get; set; }

    /// <summary>On the page, where that differs.</summary>
    [Parameter]
    public string? Heading { get; set; }

    /// <summary>The code of the tank it is about; leads back to it.</summary>
    [Parameter]
    public string? Plate { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private DateTimeOffset Now => clock.GetUtcNow();

    private string Next => Themes.Chosen(Http) is Themes.Sunlight ? "device" : Themes.Sunlight;

    private string Here => LocalPaths.Here(Http);
}
