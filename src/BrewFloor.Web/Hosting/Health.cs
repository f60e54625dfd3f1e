using System.Globalization;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Hosting;

/// <summary>Whether the process lives, and whether it can serve; if not, why not.</summary>
internal static class Health
{
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => "alive").AllowAnonymous();
        routes
            .MapGet(
                "/health/ready",
                (Readiness readiness) =>
                    readiness.Awaits is { } awaited
                        ? Results.Text($"not ready: {Why(awaited, readiness)}", statusCode: 503)
                        : Results.Text("ready")
            )
            .AllowAnonymous();
    }

    private static string Why(Awaited awaited, Readiness readiness) =>
        (awaited, readiness.LastReachedAt) switch
        {
            (Awaited.Database, { } at) => Reader.Stranger[
                "ready-database-since",
                new Number("at", at.UtcDateTime.ToString("u", CultureInfo.InvariantCulture))
            ],
            (Awaited.Database, null) => Reader.Stranger["ready-database"],
            (Awaited.Tables, _) => Reader.Stranger["ready-tables"],
            _ => Reader.Stranger["ready-restore"],
        };
}
