using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Tanks;

/// <summary>What a tank is: added, changed, retired. What happened to it is in the log and stays.</summary>
public sealed partial class TankEditPage(
    Wording wording,
    FloorReader reader,
    Inventory inventory,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private Tank? _tank;
    private Guid _id;
    private string _version = "0";
    private bool _isThere;

    // Somebody else was faster.
    private BothValues? _both;
    private IReadOnlyList<(string Key, IReadOnlyList<Field> Fields)> _sections = [];
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private Listed<Objection> _objections;

    [Parameter]
    public string? Code { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Title => _tank is null ? wording["tank-add"] : wording["tank-edit-title"];

    private IReadOnlyDictionary<string, StringValues>? Posted =>
        _both?.Posted
        ?? (HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form.ToDictionary(StringComparer.Ordinal) : null);

    protected override async Task OnInitializedAsync()
    {
        if (Code is not null)
        {
            _tank = await reader.TankAsync(Code, Http.RequestAborted) is { } view ? view.Floor.Tanks[0].Thing : null;
            if (_tank is null)
            {
                navigation.NotFound();
                return;
            }
        }

        _isThere = true;
        _id =
            _tank?.Id ?? (Guid.TryParse(Posted?.GetValueOrDefault("id"), out var made) ? made : Guid.CreateVersion7());
        _version =
            Posted?.GetValueOrDefault("version").ToString()
            ?? (_tank?.Version ?? 0).ToString(CultureInfo.InvariantCulture);
        _sections =
        [
            ("identity", [.. TankFields.Identity(wording, _tank)]),
            ("sizes", [.. TankFields.Sizes(wording, _tank)]),
            ("pressure", [.. TankFields.PressureSide(wording, _tank)]),
        ];
    }

    private async Task SaveAsync()
    {
        var said = new FormReader(
            Posted!,
            new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture)
        );
        if (TankFields.Read(said, _id, _tank) is not { } tank)
        {
            _problems = said.Problems;
            return;
        }

        Show(await StoreAsync(tank with { Version = Version }), tank.Code);
    }

    private async Task RetireAsync() =>
        Show(
            await StoreAsync(_tank! with { Version = Version, RetiredOn = wording.Figures.DayOf(clock.GetUtcNow()) }),
            _tank!.Code
        );

    private Task<Edited> StoreAsync(Tank tank)
    {
        var author = Policies.AuthorOf(Http.User);
        return _tank is null
            ? inventory.AddAsync(tank, author, Http.RequestAborted)
            : inventory.EditAsync(tank, author, Http.RequestAborted);
    }

    private int Version =>
        int.TryParse(_version, NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : 0;

    private void Show(Edited edited, string code)
    {
        switch (edited)
        {
            case Edited.Done:
                navigation.NavigateTo($"tanks/{code}");
                break;
            case Edited.Refused(var objections):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _objections = objections;
                break;
            case Edited.Overtaken when _tank is null: // the same form twice: it is there already
                navigation.NavigateTo($"tanks/{code}");
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _both = BothValues.Of(Posted!, _sections.SelectMany(section => section.Fields), wording);
                _version = _tank!.Version.ToString(CultureInfo.InvariantCulture); // kept again, theirs was seen
                break;
        }
    }
}
