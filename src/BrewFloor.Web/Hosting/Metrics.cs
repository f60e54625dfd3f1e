using System.Net;
using BrewFloor.Store.Log;
using BrewFloor.Web.Api;
using BrewFloor.Web.Doctor;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.HttpOverrides;
using OpenTelemetry.Metrics;

namespace BrewFloor.Web.Hosting;

/// <summary>Numbers about the process, for programs that watch it: a token that may read, or this machine itself.</summary>
internal static class Metrics
{
    public const string Address = "/metrics";

    private const string Policy = "Metrics";

    // Named one by one: what the components of pages count by themselves is ten times all of this.
    private static readonly string[] Meters =
    [
        LogMeter.Name,
        "Microsoft.AspNetCore.Hosting",
        "Microsoft.AspNetCore.Server.Kestrel",
        "Npgsql",
        "System.Runtime",
    ];

    // A proxy on this machine asks for others; ours moves what it was told to the original's names.
    private static readonly string[] Forwarded =
    [
        .. ProxySeen.Headers,
        ForwardedHeadersDefaults.XOriginalForHeaderName,
        ForwardedHeadersDefaults.XOriginalProtoHeaderName,
    ];

    public static IServiceCollection AddMetrics(this IServiceCollection services)
    {
        services
            .AddAuthorizationBuilder()
            .AddPolicy(Policy, policy => policy.RequireAssertion(context => IsFromHere(context) || MayRead(context)));
        services
            .AddOpenTelemetry()
            .WithMetrics(metrics =>
                metrics
                    .AddMeter(Meters)
                    .AddPrometheusExporter(answer => answer.ScrapeResponseCacheDurationMilliseconds = 0)
            ); // as it is now
        return services;
    }

    public static void MapMetrics(this IEndpointRouteBuilder routes) =>
        routes.MapPrometheusScrapingEndpoint(Address).RequireAuthorization(Policy);

    private static bool IsFromHere(AuthorizationHandlerContext context) =>
        context.Resource is HttpContext { Connection.RemoteIpAddress: { } address } http
        && IPAddress.IsLoopback(address)
        && !Array.Exists(Forwarded, http.Request.Headers.ContainsKey);

    private static bool MayRead(AuthorizationHandlerContext context) =>
        context.User.HasClaim(BearerTokens.ScopeClaim, "read");
}
