using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>One spreadsheet: what its columns mean, what becomes of each row, the import, and its undo.</summary>
public sealed partial class ImportSheetPage(
    Wording wording,
    SpreadsheetBook book,
    SpreadsheetImport import,
    SpreadsheetUndo undo,
    SheetJudging judging,
    Accounts accounts,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private Spreadsheet? _sheet;
    private Dictionary<Guid, string> _names = [];
    private SheetTable? _table;
    private SheetFields? _fields;
    private SheetMatching? _matching;
    private DryRun? _run;
    private string? _notice;
    private Guid _strike;
    private string? _reason;
    private Undone.Stands? _stands;
    private Listed<Objection> _objections;

    [Parameter]
    public Guid Id { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private int Count => _sheet!.Tanks.Count > 0 ? _sheet.Tanks.Count : _sheet.Others.Count;

    // What the columns mean was just said anew: judged by that, not by what it was before.
    private bool IsMatched => HttpMethods.IsPost(Http.Request.Method) && !Http.Request.Form.ContainsKey("seal");

    private Author Author => Policies.AuthorOf(Http.User);

    protected override async Task OnInitializedAsync()
    {
        SentForms.AreKept(Http);
        var sheet = await book.FindAsync(Id, clock.GetUtcNow(), Http.RequestAborted);
        if (sheet is null || (!sheet.IsImported && sheet.UploadedBy != Policies.IdOf(Http.User)))
        {
            navigation.NotFound();
            return;
        }

        _names = (await accounts.AllAsync(Http.RequestAborted)).ToDictionary(who => who.Id, who => who.Name);
        _fields = SheetFields.Of(sheet.Kind, wording);
        _table = sheet.Cells is { } cells ? SheetTable.FromJson(cells) : null;
        _strike = Guid.CreateVersion7();
        _reason = wording["import-undo-reason", new Number("name", sheet.Name)];
        if (_table is not null && !sheet.IsImported)
        {
            _matching = sheet.Matching is { } matched
                ? SheetMatching.FromJson(matched)
                : Guess().Match(measure => UnitPart.OwnOf(measure, wording.Figures.Units));
            _run = IsMatched ? null : await JudgeAsync(sheet);
        }

        _sheet = sheet;
    }

    private ColumnGuess Guess() => new(_table!, _fields!);

    private Task<DryRun> JudgeAsync(Spreadsheet sheet) =>
        judging.JudgeAsync(sheet, _table!, _matching!, Author, Http.RequestAborted);

    private async Task MatchAsync()
    {
        if (_table is null || _matching is null)
        {
            return; // imported meanwhile: the page says so
        }

        var posted = new MatchingForm(Http.Request.Form, _table, _fields!);
        _matching = posted.Read(Guess(), measure => UnitPart.OwnOf(measure, wording.Figures.Units));
        await book.MatchAsync(Id, _matching.ToJson(), Http.RequestAborted);
        if (posted.Twice is { } name)
        {
            _notice = wording["import-two-columns", new Number("field", _fields!.Called(name))];
        }

        _run = await JudgeAsync(_sheet!);
    }

    private async Task ImportAsync()
    {
        if (_run is null)
        {
            return;
        }

        var isAsSeen = string.Equals(Http.Request.Form["seal"], _run.Seal, StringComparison.Ordinal);
        if (isAsSeen && await import.ImportAsync(Id, _run.Brought, Author, Http.RequestAborted) is Imported.Done)
        {
            navigation.NavigateTo($"import/{Id}");
            return;
        }

        // A second press comes to what the first one did. Otherwise the floor moved since it was looked at: look once more.
        if (await book.FindAsync(Id, clock.GetUtcNow(), Http.RequestAborted) is { IsImported: true })
        {
            navigation.NavigateTo($"import/{Id}");
            return;
        }

        _run = await JudgeAsync(_sheet!);
        Http.Response.StatusCode = StatusCodes.Status409Conflict;
        _notice = wording["import-moved"];
    }

    private async Task UndoAsync()
    {
        var form = Http.Request.Form;
        _strike = Guid.TryParse(form["strike"], out var made) ? made : _strike;
        _reason = form["reason"].ToString().Trim();
        switch (await undo.UndoAsync(Id, _strike, _reason, Author, Http.RequestAborted))
        {
            case Undone.Done:
                navigation.NavigateTo($"import/{Id}");
                return;
            case Undone.Stands stands:
                _stands = stands;
                break;
            case Undone.Refused(var objections):
                _objections = objections;
                break;
            default:
                navigation.NotFound();
                return;
        }

        Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
    }

    private IEnumerable<string> Notes()
    {
        if (_table is null)
        {
            yield return wording["import-gone"];
            yield break;
        }

        yield return wording["import-header", new("row", _table.Header + 1), new("rows", _table.Below.Count())];
        if (_table.Notes.IsWestern)
        {
            yield return wording["import-western"];
        }

        if (_table.Notes.Sheet is { } name)
        {
            yield return wording["import-first-sheet", new Number("name", name)];
        }

        if (_sheet!.Kind is SheetKind.Tanks)
        {
            yield return wording["import-not-said"];
        }
    }

    private string Said(StandsUpon upon) =>
        wording[
            "import-upon",
            new("what", upon.Entry is null ? wording["import-edited"] : wording.Happened(upon.Kind)),
            new("subject", upon.Called),
            new("at", upon.At)
        ];

    private string Who(Guid? id) => _names.GetValueOrDefault(id ?? default, "?");
}
