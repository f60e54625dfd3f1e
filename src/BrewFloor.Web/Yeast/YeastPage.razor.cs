using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Yeast;

/// <summary>The fridge shelf: every culture that can be pitched, and below it those that are gone.</summary>
public sealed partial class YeastPage(Wording wording, FloorReader reader, LogReader log)
{
    private IReadOnlyList<ShownCulture> _usable = [];
    private IReadOnlyList<ShownCulture> _gone = [];

    [SupplyParameterFromQuery]
    private Guid? Logged { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var view = await reader.CulturesAsync(Http.RequestAborted);
        var jobs = ShownJobs.Of(view, await log.NamesAsync(Http.RequestAborted));
        ShownCulture[] all =
        [
            .. view.Floor.Cultures.Select(culture => new ShownCulture(
                culture.Thing,
                culture.State,
                view.Floor.Rules,
                view.Now
            )
            {
                Jobs = [.. jobs.Where(job => job.Job.Subject == Subject.Culture(culture.Thing.Id))],
            }),
        ];
        _usable = [.. all.Where(culture => culture.State.IsUsable)];
        _gone = [.. all.Where(culture => !culture.State.IsUsable)];
    }
}
