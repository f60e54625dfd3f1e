namespace BrewFloor.Web.Api;

/// <summary>The interface that programs use: <c>/api/v1</c> and its description.</summary>
public static class ApiSetup
{
    public static IServiceCollection AddFloorApi(this IServiceCollection services) =>
        services.AddOpenApi("v1").AddProblemDetails();

    public static void MapFloorApi(this IEndpointRouteBuilder routes) => routes.MapOpenApi().AllowAnonymous();
}
