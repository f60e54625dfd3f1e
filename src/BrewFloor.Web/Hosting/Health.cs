namespace BrewFloor.Web.Hosting;

/// <summary>Whether the process lives, and whether it can serve.</summary>
internal static class Health
{
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => "alive").AllowAnonymous();
        routes
            .MapGet(
                "/health/ready",
                (Readiness readiness) =>
                    readiness.IsReady ? Results.Text("ready") : Results.Text("not ready", statusCode: 503)
            )
            .AllowAnonymous();
    }
}
