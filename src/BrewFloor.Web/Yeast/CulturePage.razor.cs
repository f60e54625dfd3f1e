using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Yeast;

/// <summary>One culture: how much is left and how alive, where it comes from, what it fermented.</summary>
public sealed partial class CulturePage(
    Wording wording,
    FloorReader reader,
    LogReader log,
    FormFloors floors,
    TimelineLines timeline,
    NavigationManager navigation
)
{
    private ShownCulture? _culture;
    private IReadOnlyList<ShownCulture> _parents = [];
    private Batch? _batch;
    private IReadOnlyList<Batch> _fermented = [];
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
        var all = await reader.CulturesAsync(stop);
        var id = all.Floor.Cultures.FirstOrDefault(c => c.Thing.Number == Number).Thing?.Id;
        if (id is not { } culture || await reader.CultureAsync(culture, stop) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        var (thing, state) = view.Floor.Culture(culture);
        _culture = new ShownCulture(thing, state, view.Floor.Rules, view.Now)
        {
            Jobs =
            [
                .. ShownJobs
                    .Of(view, await log.NamesAsync(stop))
                    .Where(job => job.Job.Subject == Subject.Culture(culture)),
            ],
        };
        _parents =
        [
            .. all
                .Floor.Cultures.Where(c => state.Parents.Contains(c.Thing.Id))
                .Select(c => new ShownCulture(c.Thing, c.State, view.Floor.Rules, view.Now)),
        ];
        _batch = view.Floor.Batches.FirstOrDefault(b => b.Thing.Id == state.From?.BatchId).Thing;
        _fermented =
        [
            .. view.Floor.Batches.Where(b => state.PitchedInto.Any(p => p.BatchId == b.Thing.Id)).Select(b => b.Thing),
        ];
        if (await floors.LoadAsync(new(null, null, Number), stop) is { } floor)
        {
            _offered = EntryForms.OfferedOn(floor);
        }

        (_lines, _earlier) = await timeline.OfAsync(Subject.Culture(culture), Before, tanks: null, stop);
    }
}
