namespace BrewFloor.Web.Hosting;

/// <summary>Light, dark or sunlight: a cookie and a form, so that it works without script.</summary>
internal static class Themes
{
    public const string Cookie = "theme";
    public const string Sunlight = "sunlight";

    private static readonly string[] Known = ["light", "dark", Sunlight];

    /// <summary>The chosen theme; null: as the device has it.</summary>
    public static string? Chosen(HttpContext http) =>
        http.Request.Cookies.TryGetValue(Cookie, out var theme) && Known.Contains(theme, StringComparer.Ordinal)
            ? theme
            : null;

    public static void MapThemes(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/theme",
                (
                    HttpContext http,
                    [Microsoft.AspNetCore.Mvc.FromForm] string? theme,
                    [Microsoft.AspNetCore.Mvc.FromForm] string? back
                ) =>
                {
                    if (Known.Contains(theme, StringComparer.Ordinal))
                    {
                        http.Response.Cookies.Append(
                            Cookie,
                            theme!,
                            new CookieOptions
                            {
                                HttpOnly = true,
                                IsEssential = true,
                                MaxAge = TimeSpan.FromDays(400),
                                Path = LocalPaths.Root(http),
                                SameSite = SameSiteMode.Lax,
                                Secure = http.Request.IsHttps,
                            }
                        );
                    }
                    else
                    {
                        http.Response.Cookies.Delete(Cookie, new CookieOptions { Path = LocalPaths.Root(http) });
                    }

                    return Results.LocalRedirect(LocalPaths.Safe(back, http));
                }
            )
            .AllowAnonymous();
}
