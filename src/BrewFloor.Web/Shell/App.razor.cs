using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>The document around every page: static, one stylesheet, one script that nothing depends on.</summary>
public sealed partial class App(Wording wording)
{
    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string? Theme => Themes.Chosen(Http);
}
