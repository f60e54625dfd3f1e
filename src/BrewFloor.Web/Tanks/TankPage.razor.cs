using BrewFloor.Brewing;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>One tank: what is in it and how it is, the likeliest entries, what is due, what happened; now or as it was.</summary>
public sealed partial class TankPage(
    Wording wording,
    FloorReader reader,
    LogReader log,
    FormFloors floors,
    TimelineLines timeline,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private const int Likeliest = 3;

    private Bay? _bay;
    private IReadOnlyList<EntryForm> _likeliest = [];
    private IReadOnlyList<EntryForm> _others = [];
    private IReadOnlyList<TimelineLine> _lines = [];
    private string? _earlier;
    private DateTimeOffset? _moment;
    private Refusal? _problem;

    [Parameter, EditorRequired]
    public required string Code { get; set; }

    /// <summary>A typed time of the site: the page shows the tank as it was.</summary>
    [SupplyParameterFromQuery]
    private string? At { get; set; }

    [SupplyParameterFromQuery]
    private string? Before { get; set; }

    [SupplyParameterFromQuery]
    private Guid? Logged { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Title => $"{_bay!.Tank.Code} · {BayWords.Heading(_bay, wording)}";

    protected override async Task OnInitializedAsync()
    {
        var stop = Http.RequestAborted;
        if (await reader.TankAsync(Code, stop) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _bay = Bays.Of(view, await log.NamesAsync(stop)).First();
        await LookBackAsync(view, stop);
        if (await floors.LoadAsync(new(Code, null, null), stop) is { } floor)
        {
            var offered = EntryForms.OfferedOn(floor);
            _likeliest = [.. offered.Take(Likeliest)];
            _others = [.. offered.Skip(Likeliest).OrderBy(form => wording.Verb(form.Kind), wording.Order)];
        }

        (_lines, _earlier) = await timeline.OfAsync(Subject.Tank(_bay.Tank.Id), Before, tanks: null, stop);
    }

    private async Task LookBackAsync(FloorView view, CancellationToken stop)
    {
        if (string.IsNullOrEmpty(At))
        {
            return;
        }

        var typed = new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture).Parse(At);
        if (!typed.Gives(out var at))
        {
            _problem = typed.Refusal;
            return;
        }

        _moment = at;
        var then = (TankState)(await reader.AsItWasAsync(Subject.Tank(_bay!.Tank.Id), at, known: null, stop)).State;
        var beer = then.BatchId is { } batch
            ? (await reader.ForAsync([Subject.Batch(batch)], stop)).Floor.Batch(batch).Thing
            : null;
        var beerThen = beer is null
            ? null
            : (Domain.Batches.BatchState)
                (await reader.AsItWasAsync(Subject.Batch(beer.Id), at, known: null, stop)).State;
        _bay = new Bay(_bay.Tank, then, view.Floor.Rules, at) { Batch = beer, BatchState = beerThen };
    }
}
