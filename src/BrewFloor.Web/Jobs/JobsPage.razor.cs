using BrewFloor.Domain.Jobs;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Jobs;

/// <summary>Everything that is due, and what comes within a week: why, who is on it, until when it is put off.</summary>
public sealed partial class JobsPage(Wording wording, ShownJobs jobs, TimeProvider clock)
{
    private static readonly TimeSpan Ahead = TimeSpan.FromDays(7);

    private IReadOnlyList<ShownJob> _jobs = [];
    private DateTimeOffset _now;

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _now = clock.GetUtcNow();
        var all = await jobs.AllAsync(Http.RequestAborted);
        _jobs = [.. all.Where(job => job.At(_now) is not Urgency.Soon || job.Job.DueAt - _now < Ahead)];
    }
}
