using BrewFloor.Brewing;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Tanks;

/// <summary>A floor that holds beer already is taken over in one go: every tank that nothing was logged on yet, all or none.</summary>
public sealed partial class TakeOverPage(
    Wording wording,
    FloorReader reader,
    FloorLog log,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private IReadOnlyList<(Tank Tank, IReadOnlyList<Field> Fields)> _floors = [];
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private Verdict? _verdict;
    private Answer _answer = Answer.None;
    private bool _taken;

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private IReadOnlyDictionary<string, StringValues>? Posted =>
        HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form.ToDictionary(StringComparer.Ordinal) : null;

    protected override async Task OnInitializedAsync()
    {
        SentForms.AreKept(Http);
        var view = await reader.FloorAsync(Http.RequestAborted);
        _floors =
        [
            .. view
                .Floor.Tanks.Where(tank => IsUntouched(tank.State))
                .OrderBy(tank => tank.Thing.Code, StringComparer.Ordinal)
                .Select(tank => (tank.Thing, (IReadOnlyList<Field>)[.. TakenOver.Fields(tank.Thing, wording)])),
        ];
    }

    private static bool IsUntouched(TankState state) =>
        state is { Soil: Soil.Unknown, HoldsBeer: false, LastFilled: null, LastEmptied: null, Planned: null };

    private async Task SendAsync()
    {
        var said = new FormReader(
            Posted!,
            new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture)
        );
        LogEntry[] entries = [.. _floors.SelectMany(floor => TakenOver.Read(said, floor.Tank))];
        _answer = EntryReading.Answer(said);
        if (!said.IsFine || entries.Length == 0)
        {
            _problems = said.Problems;
            return;
        }

        var request = new LogRequest(
            [.. entries.Select(entry => new Sent(entry, _answer))],
            Policies.AuthorOf(Http.User)
        );
        if (said.Flag("check"))
        {
            var heard = await log.CheckAsync(request, Http.RequestAborted);
            _taken = heard.Conflict is not null;
            _verdict = Verdicts.Together(heard.Judged);
            return;
        }

        switch (await log.AppendAsync(request, Http.RequestAborted))
        {
            case Appended.Refused(var judged):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _verdict = Verdicts.Together(judged);
                break;
            case Appended.Stored: // now, or by the same form before
                navigation.NavigateTo("");
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _taken = true;
                break;
        }
    }
}
