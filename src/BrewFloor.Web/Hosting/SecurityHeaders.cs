namespace BrewFloor.Web.Hosting;

/// <summary>The headers every answer carries.</summary>
internal static class SecurityHeaders
{
    // Places that follow data travel as custom properties in style attributes; nothing else is inline.
    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data:; "
        + "font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    // What no page of ours asks a browser for. Passkeys are asked for, by our own pages alone.
    private const string Permissions =
        "accelerometer=(), autoplay=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), "
        + "microphone=(), midi=(), payment=(), usb=(), publickey-credentials-create=(self), publickey-credentials-get=(self)";

    // A year, as ASVS 5.0 (3.4.1) asks. Not for the hosts below: a club may have others there, without TLS.
    private const string OverTlsOnly = "max-age=31536000";

    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            static (context, next) =>
            {
                // At the last moment: whoever answers for a failure clears what was set before.
                context.Response.OnStarting(
                    static response =>
                    {
                        Set((HttpResponse)response);
                        return Task.CompletedTask;
                    },
                    context.Response
                );
                return next(context);
            }
        );

    private static void Set(HttpResponse answer)
    {
        var headers = answer.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = Permissions;
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (answer.HttpContext.Request.IsHttps)
        {
            headers.StrictTransportSecurity = OverTlsOnly;
        }

        // What is the same for everybody says itself how long it is good; all else is for whoever asked, now.
        if (headers.CacheControl.Count == 0)
        {
            headers.CacheControl = "no-store";
        }
    }
}
