using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Items;

/// <summary>One item: what is left, when more is bought, what came in and what took it.</summary>
public sealed partial class ItemPage(
    Wording wording,
    FloorReader reader,
    LogReader log,
    FormFloors floors,
    TimelineLines timeline,
    NavigationManager navigation
)
{
    private ShownItem? _item;
    private IReadOnlyList<EntryForm> _offered = [];
    private IReadOnlyList<TimelineLine> _lines = [];
    private string? _earlier;

    [Parameter]
    public int Number { get; set; }

    [SupplyParameterFromQuery]
    private string? Before { get; set; }

    [SupplyParameterFromQuery]
    private Guid? Logged { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var stop = Http.RequestAborted;
        if (await reader.ItemAsync(Number, stop) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        var (thing, state) = view.Floor.Items[0];
        _item = new ShownItem(thing, state, view.Now) { Jobs = ShownJobs.Of(view, await log.NamesAsync(stop)) };
        if (await floors.LoadAsync(new(null, null, null) { ItemNumber = Number }, stop) is { } floor)
        {
            _offered = EntryForms.OfferedOn(floor);
        }

        var inventory = await reader.InventoryAsync(stop);
        var codes = inventory.Floor.Tanks.ToDictionary(tank => tank.Thing.Id, tank => tank.Thing.Code);
        (_lines, _earlier) = await timeline.OfAsync(Subject.Item(thing.Id), Before, codes, stop);
    }
}
