using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>Something broke: nothing was half written, and the reference finds it in the log of the process.</summary>
public sealed partial class ErrorPage(Wording wording)
{
    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Reference => Http.TraceIdentifier;
}
