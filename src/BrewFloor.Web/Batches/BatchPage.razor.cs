using BrewFloor.Brewing;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Yeast;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>One batch: its curve, where every litre is or went, its yeast, what is left to do, what happened.</summary>
public sealed partial class BatchPage(
    Wording wording,
    FloorReader reader,
    LogReader log,
    TimelineLines timeline,
    NavigationManager navigation
)
{
    private ShownBatch? _batch;
    private Outcome<BatchForecast>? _forecast;
    private Outcome<ValvePlan>? _valve;
    private AskedGravity? _asked;
    private IReadOnlyDictionary<Guid, string> _codes = new Dictionary<Guid, string>();
    private IReadOnlyList<ShownJob> _jobs = [];
    private IReadOnlyList<ShownCulture> _yeast = [];
    private IReadOnlyList<TimelineLine> _lines = [];
    private string? _earlier;
    private DateTimeOffset _now;

    [Parameter]
    public int Number { get; set; }

    [SupplyParameterFromQuery]
    private string? Before { get; set; }

    [SupplyParameterFromQuery]
    private Guid? Logged { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private BatchForecast? Forecast => _forecast is { IsDone: true } outcome ? outcome.Value : null;

    private IEnumerable<string> Tanks =>
        _batch!.State.InTanks.Select(tank => _codes.GetValueOrDefault(tank.TankId)).OfType<string>();

    protected override async Task OnInitializedAsync()
    {
        var stop = Http.RequestAborted;
        if (await reader.BatchAsync(Number, stop) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _now = view.Now;
        var (thing, state) = view.Floor.Batches[0];
        _forecast = await reader.ForecastAsync(view, stop);
        _valve = Forecasts.ValveOf(view);
        _asked = AskedGravity.Of(
            Http.Request.Query,
            new SiteTimes(wording.Figures.Zone, _now, wording.Figures.Culture)
        );
        _batch = new ShownBatch(thing, state, view.Floor.Rules, view.Now); // from here on the page is drawn
        _codes = view.Floor.Tanks.ToDictionary(tank => tank.Thing.Id, tank => tank.Thing.Code);
        _jobs =
        [
            .. ShownJobs.Of(view, await log.NamesAsync(stop)).Where(job => job.Job.Subject == Subject.Batch(thing.Id)),
        ];
        _yeast = [.. view.Floor.Cultures.Select(c => new ShownCulture(c.Thing, c.State, view.Floor.Rules, view.Now))];
        (_lines, _earlier) = await timeline.OfAsync(Subject.Batch(thing.Id), Before, _codes, stop);
    }
}
