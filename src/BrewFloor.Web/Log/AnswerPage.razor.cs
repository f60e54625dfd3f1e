using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>A brewer answers for what was done anyway: what came of it.</summary>
public sealed partial class AnswerPage(
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
    private string? _words;
    private bool _isMissing;

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
        if (_line is null)
        {
            navigation.NotFound();
            return;
        }

        var posted = HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form : null;
        _entryId = Guid.TryParse(posted?["id"], out var made) ? made : Guid.CreateVersion7();
        _words = posted?["words"];
    }

    private async Task SendAsync()
    {
        if (string.IsNullOrWhiteSpace(_words))
        {
            _isMissing = true;
            return;
        }

        var answered = new Answered(Id, _words.Trim()) { Id = _entryId };
        switch (await log.AppendAsync(new LogRequest(answered, Policies.AuthorOf(Http.User)), Http.RequestAborted))
        {
            case Appended.Stored:
                navigation.NavigateTo("jobs");
                break;
            case Appended.Refused(var judged):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _verdict = judged[0].Verdict;
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                break;
        }
    }
}
