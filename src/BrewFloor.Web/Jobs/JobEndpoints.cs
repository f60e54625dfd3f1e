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
                async (Guid id, [FromForm] string? back, HttpContext http, JobKeeper keeper, ShownJobs jobs) =>
                {
                    var me = Policies.IdOf(http.User);
                    if (await jobs.OneAsync(id, http.RequestAborted) is { } job)
                    {
                        await (
                            job.Open.TakenBy == me
                                ? keeper.GiveBackAsync(id, http.RequestAborted)
                                : keeper.TakeAsync(id, me, http.RequestAborted)
                        );
                    }

                    return Results.LocalRedirect(LocalPaths.Safe(back, http));
                }
            )
            .RequireAuthorization(Policies.Helper);
}
