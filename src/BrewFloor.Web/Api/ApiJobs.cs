using System.Text.Json.Nodes;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>What is due, for programs.</summary>
internal static class ApiJobs
{
    public static void MapApiJobs(this IEndpointRouteBuilder api) =>
        api.MapGet("/jobs", ListAsync)
            .Reads(
                "Jobs",
                "Every open job, also those not due yet; the most pressing first, with the numbers that made it so."
            )
            .IsPaged();

    private static async Task<IResult> ListAsync(
        HttpRequest request,
        FloorReader reader,
        Wording words,
        CancellationToken stop
    )
    {
        var view = await reader.JobsAsync(stop);
        return ApiPages.Page(request, view.Jobs, Cursor, job => Shown(job, view, words));
    }

    // By when it is overdue, then due; the id tells two of one moment apart.
    private static string Cursor(OpenJob job) =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{job.Job.OverdueAt.UtcTicks:x16}-{job.Job.DueAt.UtcTicks:x16}-{job.Id:N}"
        );

    private static JsonObject Shown(OpenJob open, FloorView view, Wording words)
    {
        var job = open.Job;
        var shown = new JsonObject
        {
            ["id"] = open.Id.ToString(),
            ["rule"] = job.Rule,
            ["urgency"] = Api.Shown.Of(job.At(view.Now)),
            ["text"] = words.Verb(job),
            ["because"] = words.Because(job),
            ["numbers"] = ApiQuantities.Shown(job.Because),
            ["subject"] = new JsonObject
            {
                ["kind"] = Api.Shown.Of(job.Subject.Kind),
                ["id"] = job.Subject.Id.ToString(),
            },
            ["due_at"] = Api.Shown.Of(job.DueAt),
            ["overdue_at"] = Api.Shown.Of(job.OverdueAt),
            ["taken_by"] = open.TakenBy?.ToString(),
            ["taken_at"] = Api.Shown.Of(open.TakenAt),
            ["put_off_until"] = Api.Shown.Of(open.PutOffUntil),
            ["put_off_reason"] = open.PutOffReason,
        };
        Name(shown, job, view.Floor);
        return shown;
    }

    private static void Name(JsonObject shown, Job job, Floor floor)
    {
        Guid?[] ids = [job.Subject.Id, job.TankId];
        shown["tank"] = floor.Tanks.Where(t => ids.Contains(t.Thing.Id)).Select(t => t.Thing.Code).FirstOrDefault();
        shown["batch"] = floor
            .Batches.Where(b => ids.Contains(b.Thing.Id))
            .Select(b => (int?)b.Thing.Number)
            .FirstOrDefault();
        shown["culture"] = floor
            .Cultures.Where(c => ids.Contains(c.Thing.Id))
            .Select(c => (int?)c.Thing.Number)
            .FirstOrDefault();
        shown["item"] = floor
            .Items.Where(i => ids.Contains(i.Thing.Id))
            .Select(i => (int?)i.Thing.Number)
            .FirstOrDefault();
    }
}
