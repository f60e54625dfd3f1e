using BrewFloor.Domain.People;
using BrewFloor.Store.Jobs;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Mvc;

namespace BrewFloor.Web.Jobs;

/// <summary>Taking a job and giving it back: one press each.</summary>
internal static class JobEndpoints
{
    public static void MapJobs(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/jobs/{id:guid}/take",
                async (Guid id, [FromForm] string? back, [FromForm] bool? gives, HttpContext http, JobKeeper keeper) =>
                {
                    // What is meant is posted: the second of two presses changes nothing.
                    var me = Policies.IdOf(http.User);
                    await (
                        gives is not true ? keeper.TakeAsync(id, me, http.RequestAborted)
                        : Policies.RoleOf(http.User) >= Role.Brewer ? keeper.FreeAsync(id, http.RequestAborted)
                        : keeper.GiveBackAsync(id, me, http.RequestAborted)
                    );
                    return Results.LocalRedirect(LocalPaths.Safe(back, http));
                }
            )
            .RequireAuthorization(Policies.Helper);
}
