using BrewFloor.Brewing;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>One entry, one page: cautions, fields, what the floor says, and one slab that says the verb.</summary>
/// <remarks>The same page asks ("may I?") and logs; the ids are made when it is drawn, so that sending it twice is one entry.</remarks>
public sealed partial class EntryPage(
    Wording wording,
    FloorLog log,
    FormFloors floors,
    BrewersYes brewers,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private readonly Dictionary<string, Guid> _ids = new(StringComparer.Ordinal);
    private EntryForm? _form;
    private FormFloor? _floor;
    private IReadOnlyList<Field> _fields = [];
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private IReadOnlyList<(Guid Id, string Name)> _people = [];
    private Verdict? _verdict;
    private Answer _answer = Answer.None;
    private bool _taken;
    private string? _noBrewer;

    [Parameter]
    public string? Code { get; set; }

    [Parameter]
    public int? BatchNumber { get; set; }

    [Parameter]
    public int? CultureNumber { get; set; }

    [Parameter]
    public int? ItemNumber { get; set; }

    [Parameter, EditorRequired]
    public required string Kind { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private FormPlace Place => new(Code, BatchNumber, CultureNumber) { ItemNumber = ItemNumber };

    private string Verb => wording.Verb(Kind);

    private bool AsksBrewer => BrewersYes.IsAsked(Kind, Policies.AuthorOf(Http.User));

    // Where a brewer allows beforehand what was just stopped.
    private string? AllowAt =>
        _floor?.Tank is { } tank
        && Kind is not "allowed"
        && _verdict is { } verdict
        && Stops.Allowable(verdict) is { Count: > 0 } codes
            ? $"tanks/{tank.Code}/log/allowed?kind={Kind}&codes={string.Join(',', codes)}"
            : null;

    private string Title => _floor?.Tank is { } tank ? $"{tank.Code} · {Verb}" : Verb;

    private IEnumerable<string> Cautions => _form!.Cautions(_floor!);

    private IReadOnlyDictionary<string, StringValues>? Posted =>
        HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form.ToDictionary(StringComparer.Ordinal) : null;

    protected override async Task OnInitializedAsync()
    {
        SentForms.AreKept(Http);
        _form = EntryForms.ByKind.GetValueOrDefault(Kind);
        _floor = _form is null ? null : await floors.LoadAsync(Place, Http.RequestAborted);
        if (_form is null || _floor is null)
        {
            navigation.NotFound();
            return;
        }

        _fields = Prefilled([.. _form.Fields(_floor)]);
        _people = await floors.PeopleAsync(Http.RequestAborted);
        foreach (var name in FormIds.Names)
        {
            _ids[name] = Guid.TryParse(Posted?.GetValueOrDefault(name), out var made) ? made : Guid.CreateVersion7();
        }
    }

    private async Task SendAsync()
    {
        var times = new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture);
        var said = new FormReader(Posted!, times);
        var entries = EntryReading.Read(_form!, said, _floor!);
        _answer = EntryReading.Answer(said);
        if (!said.IsFine)
        {
            _problems = said.Problems;
            return;
        }

        var isOnlyAsked = said.Flag("check"); // while a password is being typed
        if (await AuthorAsync(isOnlyAsked) is not { } author)
        {
            Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return;
        }

        var request = new LogRequest(
            [.. entries.Select(entry => new Sent(entry, _answer) { CautionsShown = [.. Cautions] })],
            author
        );
        if (isOnlyAsked)
        {
            var heard = await log.CheckAsync(request, Http.RequestAborted);
            _taken = heard.Conflict is not null;
            _verdict = Verdicts.Together(heard.Judged);
            return;
        }

        Show(await log.AppendAsync(request, Http.RequestAborted), entries[0]);
    }

    // Null: somebody who may was asked for, and didn't say yes.
    private async Task<Author?> AuthorAsync(bool isOnlyAsked)
    {
        var author = Policies.AuthorOf(Http.User);
        if (!AsksBrewer || isOnlyAsked)
        {
            return AsksBrewer ? author with { Role = Role.Brewer } : author; // judged as it will be; nothing is written
        }

        var form = Posted!;
        (var brewer, _noBrewer) = form.GetValueOrDefault(BrewerPart.CredentialField).ToString()
            is { Length: > 0 } answered
            ? await brewers.HearAsync(
                Http,
                form.GetValueOrDefault(FormIds.OfEntry(0)),
                answered,
                form.GetValueOrDefault(BrewerPart.StateField)
            )
            : await brewers.AskAsync(
                Http,
                form.GetValueOrDefault(BrewerPart.NameField),
                form.GetValueOrDefault(BrewerPart.PasswordField)
            );
        return brewer;
    }

    private void Show(Appended appended, LogEntry first)
    {
        switch (appended)
        {
            case Appended.Stored:
                navigation.NavigateTo($"{Home}?logged={first.Id}#logged"); // a reload must not post again
                break;
            case Appended.Refused(var judged):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _verdict = Verdicts.Together(judged);
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _taken = true;
                break;
        }
    }

    private string Home =>
        _form!.About is SubjectKind.Item ? $"items{(ItemNumber is { } item ? $"/{item}" : "")}"
        : _floor!.Culture is { } culture ? $"yeast/{culture.Number}"
        : _floor.Tank is { } tank ? $"tanks/{tank.Code}"
        : BatchNumber is { } number ? $"batches/{number}"
        : "yeast";

    // A link may bring values along: "allow beforehand" knows which entry was stopped.
    private IReadOnlyList<Field> Prefilled(IReadOnlyList<Field> fields) =>
        [
            .. fields.Select(field =>
                Http.Request.Query.TryGetValue(field.Name, out var value)
                    ? field with
                    {
                        Start = value.ToString(),
                    }
                    : field
            ),
        ];
}
