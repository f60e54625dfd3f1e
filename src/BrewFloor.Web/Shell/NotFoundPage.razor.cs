using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>No such page, tank, batch or culture; or why else nothing is shown of what was asked for.</summary>
public sealed partial class NotFoundPage(Wording wording)
{
    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Key =>
        Http.Response.StatusCode switch
        {
            StatusCodes.Status400BadRequest => "not-read",
            StatusCodes.Status403Forbidden => "from-elsewhere",
            StatusCodes.Status413PayloadTooLarge => "too-large",
            StatusCodes.Status429TooManyRequests => "too-often",
            _ => "not-found",
        };
}
