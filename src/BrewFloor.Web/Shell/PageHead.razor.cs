using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>The head of a page: what it is, how old it is, and one press to sunlight.</summary>
public sealed partial class PageHead(Wording wording, TimeProvider clock)
{
    private const int Short = 26; // characters that fit beside the time in two lines

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

    // A question has a line of its own on a phone; a name stands beside the time.
    private string? Length => (Heading ?? Title).Length > Short ? "long" : null;

    private string Next => Themes.Chosen(Http) is Themes.Sunlight ? "device" : Themes.Sunlight;

    private string Here => LocalPaths.Here(Http);
}
