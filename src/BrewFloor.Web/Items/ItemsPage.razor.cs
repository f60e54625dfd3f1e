using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Items;

/// <summary>The stock: chemicals, parts and gas, how much is left of each, and what must be bought.</summary>
public sealed partial class ItemsPage(Wording wording, FloorReader reader, LogReader log)
{
    private IReadOnlyList<ShownItem> _kept = [];
    private IReadOnlyList<ShownItem> _gone = [];

    [SupplyParameterFromQuery]
    private Guid? Logged { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var view = await reader.ItemsAsync(Http.RequestAborted);
        var jobs = ShownJobs.Of(view, await log.NamesAsync(Http.RequestAborted));
        ShownItem[] all =
        [
            .. view.Floor.Items.Select(item => new ShownItem(item.Thing, item.State, view.Now)
            {
                Jobs = [.. jobs.Where(job => job.Job.Subject == Subject.Item(item.Thing.Id))],
            }),
        ];
        _kept = [.. all.Where(item => !item.Thing.IsNoLongerKept)];
        _gone = [.. all.Where(item => item.Thing.IsNoLongerKept)];
    }
}
