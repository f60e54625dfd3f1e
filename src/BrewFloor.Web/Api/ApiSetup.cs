using Microsoft.AspNetCore.Authentication;

namespace BrewFloor.Web.Api;

/// <summary>The interface that programs use: <c>/api/v1</c> and its description.</summary>
public static class ApiSetup
{
    public static IServiceCollection AddFloorApi(this IServiceCollection services)
    {
        services.AddOpenApi("v1", ApiDescription.Describe).AddProblemDetails();
        services.AddAuthentication().AddScheme<AuthenticationSchemeOptions, BearerTokens>(BearerTokens.Known, null);
        services.AddAuthorization(ApiPolicies.Add);
        return services.AddScoped<LogWriting>();
    }

    public static void MapFloorApi(this IEndpointRouteBuilder routes)
    {
        routes.MapOpenApi().AllowAnonymous();
        var api = routes.MapGroup("/api/v1");
        api.MapApiTanks();
        api.MapApiBatches();
        api.MapApiCultures();
        api.MapApiItems();
        api.MapApiLog();
        api.MapApiJobs();
        api.MapApiCalculators();
    }
}
