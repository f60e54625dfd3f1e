using BrewFloor.Brewing;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.People;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>A club's own spreadsheet comes up; and what came up before.</summary>
public sealed partial class ImportPage(
    Wording wording,
    SpreadsheetBook book,
    Accounts accounts,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private const int LongestName = 120;

    private Listed<Spreadsheet> _sheets = [];
    private Dictionary<Guid, string> _names = [];
    private SheetKind _kind;
    private string? _problem;

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _names = (await accounts.AllAsync(Http.RequestAborted)).ToDictionary(who => who.Id, who => who.Name);
        _sheets = await book.PastAsync(Policies.IdOf(Http.User), clock.GetUtcNow(), Http.RequestAborted);
    }

    private async Task UploadAsync()
    {
        _kind = Enum.TryParse<SheetKind>(Http.Request.Form["kind"], out var kind) ? kind : SheetKind.Tanks;
        if (Http.Request.Form.Files["file"] is not { Length: > 0 } file)
        {
            Refuse(wording["import-nothing-sent"]);
            return;
        }

        if (file.Length > SheetLimits.Bytes)
        {
            Refuse(wording.Say(new Refusal("sheet-too-large", "file", "", "2")));
            return;
        }

        using var bytes = new MemoryStream((int)file.Length);
        await file.CopyToAsync(bytes, Http.RequestAborted);
        var read = SheetFile.Read(bytes.ToArray());
        if (!read.Gives(out var table))
        {
            Refuse(wording.Say(read.Refusal!));
            return;
        }

        var sheet = new Spreadsheet(
            Guid.CreateVersion7(),
            _kind,
            Shortened(file.FileName),
            Policies.IdOf(Http.User),
            clock.GetUtcNow()
        )
        {
            Cells = table.ToJson(),
        };
        await book.KeepAsync(sheet, Http.RequestAborted);
        navigation.NavigateTo($"import/{sheet.Id}");
    }

    private void Refuse(string sentence)
    {
        Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        _problem = sentence;
    }

    // Some browsers send the whole path; what steers a terminal or a line is no part of a name.
    private static string Shortened(string name)
    {
        var last = name.Split('/', '\\')[^1];
        var clean = string.Concat(last.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))).Trim();
        return clean.Length == 0 ? "?" : clean[..Math.Min(clean.Length, LongestName)];
    }

    private string Line(Spreadsheet sheet)
    {
        Number kind = new("kind", wording["import-kind-" + sheet.Kind]);
        return sheet switch
        {
            { UndoneAt: { } at } => wording["import-line-undone", kind, new("at", at), new("who", Who(sheet.UndoneBy))],
            { ImportedAt: { } at } => wording[
                "import-line-done",
                kind,
                new("at", at),
                new("who", Who(sheet.ImportedBy))
            ],
            _ => wording["import-line-open", kind, new("until", sheet.UploadedAt + SpreadsheetBook.Kept)],
        };
    }

    private string Who(Guid? id) => _names.GetValueOrDefault(id ?? default, "?");
}
