using BrewFloor.Store.People;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Hosting;

/// <summary>Whatever changes something is refused to pages of other sites, before anything is read of it.</summary>
/// <remarks>
/// Beside the token that every form carries. Browsers say where a request was made (<c>Sec-Fetch-Site</c>, or <c>Origin</c> over plain
/// HTTP); programs say nothing, and bring a token of their own.
/// </remarks>
internal static class CrossSite
{
    public static IApplicationBuilder UseNoCrossSite(this IApplicationBuilder app) =>
        app.Use(
            static async (context, next) =>
            {
                if (!IsFromElsewhere(context.Request))
                {
                    await next(context);
                    return;
                }

                context.Response.StatusCode = StatusCodes.Status403Forbidden;
                await NoteAsync(context);
            }
        );

    // Once a minute from each place: whoever floods fills no log. Of the address only its beginning: the rest may be a secret.
    private static async Task NoteAsync(HttpContext context)
    {
        var pace = context.RequestServices.GetRequiredService<Pace>();
        if (pace.Wait($"elsewhere {Guessing.Place(context.Connection.RemoteIpAddress)}", 1) is null)
        {
            var path = context.Request.Path.Value!.Split('/');
            await context.NoteAsync(SecurityKind.RefusedFromElsewhere, detail: $"{context.Request.Method} /{path[1]}");
        }
    }

    private static bool IsFromElsewhere(HttpRequest request) =>
        !IsOnlyALook(request.Method)
        && (
            request.Headers["Sec-Fetch-Site"] is [{ } site]
                ? site is not ("same-origin" or "none")
                : request.Headers.Origin is [{ } origin] && !IsThisHost(origin, request.Host)
        );

    private static bool IsOnlyALook(string method) =>
        HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method);

    // The host alone: a proxy that isn't trusted yet speaks TLS to the browser, and the floor doesn't know.
    private static bool IsThisHost(string origin, HostString host) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var from)
        && Uri.TryCreate($"{from.Scheme}://{host}", UriKind.Absolute, out var here)
        && string.Equals(from.Authority, here.Authority, StringComparison.OrdinalIgnoreCase);
}
