using BrewFloor.Brewing;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>The form of an entry once more, with what was logged in it: sent, it stands in the place of the old one.</summary>
public sealed partial class CorrectPage(
    Wording wording,
    FloorLog log,
    FloorReader reader,
    FormFloors floors,
    TimelineLines timeline,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private TimelineLine? _line;
    private EntryForm? _form;
    private FormFloor? _floor;
    private IReadOnlyList<Field> _fields = [];
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private IReadOnlyList<(Guid Id, string Name)> _people = [];
    private Verdict? _verdict;
    private Answer _answer = Answer.None;
    private bool _taken;
    private Guid _correctionId;

    [Parameter]
    public Guid Id { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Heading => $"{wording.Verb("corrected")}: {wording.Happened(_line!.Kind)}";

    private Refusal? ReasonProblem => _problems.GetValueOrDefault("reason");

    // Posted values come back as they were typed; a fresh form holds what was logged.
    private Dictionary<string, StringValues> Shown { get; set; } = new(StringComparer.Ordinal);

    // What the form carries along unseen: the ids of what was brought into being.
    private IEnumerable<(string Name, string Value)> Carried =>
        FormIds
            .Names.Where(name => name.StartsWith("new.", StringComparison.Ordinal))
            .Select(name => (name, Shown.GetValueOrDefault(name).ToString()))
            .Where(carried => carried.Item2.Length > 0);

    protected override async Task OnInitializedAsync()
    {
        SentForms.AreKept(Http);
        var stop = Http.RequestAborted;
        var codes = (await reader.InventoryAsync(stop)).Floor.Tanks.ToDictionary(t => t.Thing.Id, t => t.Thing.Code);
        _line = await timeline.OneAsync(Id, codes, stop);
        _form = _line is null ? null : EntryForms.ByKind.GetValueOrDefault(_line.Kind);
        _floor = _form is null ? null : await floors.LoadAsync(PlaceOf(_line!, codes), stop);
        if (_line is null || _form is null || _floor is null || _line.IsStruck)
        {
            navigation.NotFound();
            return;
        }

        _floor = await FormBatch.OfAsync(_floor, _line.Entry, reader, stop);
        _fields = [.. _form.Fields(_floor)];
        _people = await floors.PeopleAsync(stop);
        var posted = HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form : null;
        _correctionId = Guid.TryParse(posted?["correction"], out var made) ? made : Guid.CreateVersion7();
        Shown = posted?.ToDictionary(StringComparer.Ordinal) ?? Logged(_line.Entry);
    }

    private async Task SendAsync()
    {
        var said = new FormReader(
            Shown,
            new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture)
        );
        var entries = EntryReading.Read(_form!, said, _floor!);
        var reason = said.RequiredText("reason");
        _answer = EntryReading.Answer(said);
        if (!said.IsFine)
        {
            _problems = said.Problems;
            return;
        }

        var replacement = Corrections.Standing(entries[0], _line!.Entry);
        var corrected = new Corrected(Id, replacement, reason) { Id = _correctionId };
        var request = new LogRequest([new Sent(corrected, _answer)], Policies.AuthorOf(Http.User));
        if (said.Flag("check"))
        {
            var heard = await log.CheckAsync(request, Http.RequestAborted);
            _taken = heard.Conflict is not null;
            _verdict = Verdicts.Together(heard.Judged);
            return;
        }

        switch (await log.AppendAsync(request, Http.RequestAborted))
        {
            case Appended.Stored:
                navigation.NavigateTo(Home);
                break;
            case Appended.Refused(var judged):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _verdict = judged[0].Verdict;
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _taken = true;
                break;
        }
    }

    private string Home =>
        _line!.TankCode is { } code ? $"tanks/{code}?logged={Id}#logged"
        : _floor!.Item is { } item ? $"items/{item.Number}?logged={Id}#logged"
        : "";

    private Dictionary<string, StringValues> Logged(LogEntry entry)
    {
        var fields = FormWriter
            .Write(entry, wording.Figures)
            .ToDictionary(field => field.Key, field => new StringValues(field.Value), StringComparer.Ordinal);
        fields["when"] = new SiteTimes(wording.Figures.Zone, entry.At, wording.Figures.Culture).Typed(entry.At);
        fields["note"] = entry.Note;
        fields["done-by"] = new StringValues([.. entry.DoneBy.Select(id => id.ToString())]);
        return fields;
    }

    private static FormPlace PlaceOf(TimelineLine line, Dictionary<Guid, string> codes)
    {
        var tank = line.Entry.Subjects.FirstOrDefault(subject => subject.Kind is SubjectKind.Tank);
        return new(codes.GetValueOrDefault(tank.Id), BatchNumber: null, CultureNumber: null);
    }
}
