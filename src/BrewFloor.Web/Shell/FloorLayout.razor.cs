using BrewFloor.Store.Jobs;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Shell;

/// <summary>What stands around every page: the way past it, and the ways to the others. It shows only what exists.</summary>
public sealed partial class FloorLayout(Wording wording, DueJobs jobs, TimeProvider clock)
{
    private static readonly (string Href, string Key)[] Ways =
    [
        ("./", "nav-floor"),
        ("jobs", "nav-jobs"),
        ("batches", "nav-batches"),
        ("yeast", "nav-yeast"),
        ("more", "nav-more"),
    ];

    private int _due;

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    // With a password that works once, every way would lead to the page where another is chosen.
    private bool MayGo => Policies.RoleOf(Http.User) is not null && !Policies.MustChange(Http.User);

    private string Here => LocalPaths.Here(Http);

    protected override async Task OnInitializedAsync()
    {
        if (MayGo)
        {
            _due = await jobs.CountAsync(clock.GetUtcNow(), Http.RequestAborted);
        }
    }

    private bool IsHere(string href) =>
        href is "./"
            ? Http.Request.Path == "/" || Http.Request.Path.StartsWithSegments("/tanks", StringComparison.Ordinal)
            : Http.Request.Path.StartsWithSegments($"/{href}", StringComparison.Ordinal);
}
