using Microsoft.AspNetCore.Antiforgery;

namespace BrewFloor.Web.Account;

/// <summary>The framework refuses a forged form where it reads one by itself; endpoints that read it themselves ask here.</summary>
internal static class OurForms
{
    /// <summary>Only a form that this floor gave out is taken; any other is a bad request.</summary>
    public static RouteGroupBuilder TakesOurForms(this RouteGroupBuilder routes) =>
        routes.AddEndpointFilter(
            static async (context, next) =>
            {
                var forgery = context.HttpContext.RequestServices.GetRequiredService<IAntiforgery>();
                return await forgery.IsRequestValidAsync(context.HttpContext)
                    ? await next(context)
                    : Results.BadRequest();
            }
        );
}
