namespace BrewFloor.Web.Hosting;

/// <summary>The headers every answer carries.</summary>
internal static class SecurityHeaders
{
    // Places that follow data travel as custom properties in style attributes; nothing else is inline.
    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data:; "
        + "font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            static (context, next) =>
            {
                // At the last moment: whoever answers for a failure clears what was set before.
                context.Response.OnStarting(
                    static response =>
                    {
                        Set(((HttpResponse)response).Headers);
                        return Task.CompletedTask;
                    },
                    context.Response
                );
                return next(context);
            }
        );

    private static void Set(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
    }
}
