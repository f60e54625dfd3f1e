using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>Strikes an entry out, with a reason; when later ones would be impossible, all of them together.</summary>
public sealed partial class StrikePage(
    Wording wording,
    FloorLog log,
    FloorReader reader,
    TimelineLines timeline,
    NavigationManager navigation
)
{
    private TimelineLine? _line;
    private Guid _entryId;
    private Verdict? _verdict;
    private IReadOnlyList<Guid> _later = [];
    private string? _reason;
    private bool _isReasonMissing;
    private bool _isTogether;
    private bool _taken;

    [Parameter]
    public Guid Id { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        SentForms.AreKept(Http);
        var codes = (await reader.InventoryAsync(Http.RequestAborted)).Floor.Tanks.ToDictionary(
            t => t.Thing.Id,
            t => t.Thing.Code
        );
        _line = await timeline.OneAsync(Id, codes, Http.RequestAborted);
        if (_line is null || _line.IsStruck)
        {
            navigation.NotFound();
            return;
        }

        var posted = HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form : null;
        _entryId = Guid.TryParse(posted?["id"], out var made) ? made : Guid.CreateVersion7();
        _reason = posted?["reason"];
    }

    private async Task SendAsync()
    {
        if (string.IsNullOrWhiteSpace(_reason))
        {
            _isReasonMissing = true;
            return;
        }

        Guid[] together = Http.Request.Form["together"] == "true" ? [.. Also(Http.Request.Form["also"])] : [];
        var struck = new Struck([Id, .. together], _reason.Trim()) { Id = _entryId };
        switch (await log.AppendAsync(new LogRequest(struck, Policies.AuthorOf(Http.User)), Http.RequestAborted))
        {
            case Appended.Stored:
                navigation.NavigateTo(_line!.TankCode is { } code ? $"tanks/{code}" : "");
                break;
            case Appended.Refused(var judged):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _verdict = judged[0].Verdict;
                // Only a few are named at a time: those agreed to before stay agreed to.
                _isTogether = together.Length > 0;
                _later = [.. together.Concat(LaterOnes(_verdict)).Distinct()];
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _taken = true;
                break;
        }
    }

    private static IEnumerable<Guid> Also(IEnumerable<string?> posted) =>
        posted.Select(text => Guid.TryParse(text, out var id) ? id : default).Where(id => id != default);

    private static IEnumerable<Guid> LaterOnes(Verdict verdict) =>
        verdict.Objections.SelectMany(Afterwards.Named).Distinct();
}
