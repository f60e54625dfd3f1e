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

/// <summary>The ports of a tank: added, changed, removed. They are part of what it is; what is on them is in the log.</summary>
public sealed partial class PortsPage(
    Wording wording,
    FloorReader reader,
    Inventory inventory,
    TimeProvider clock,
    NavigationManager navigation
)
{
    private const int FreeRows = 3;

    private Tank? _tank;
    private string _version = "0";
    private IReadOnlyList<Row> _rows = [];
    private Dictionary<string, StringValues>? _typical;

    // Somebody else was faster.
    private BothValues? _both;
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private Listed<Objection> _objections;

    [Parameter, EditorRequired]
    public required string Code { get; set; }

    /// <summary>A tank without ports opens with what its type usually has.</summary>
    [SupplyParameterFromQuery(Name = "typical")]
    private bool IsTypical { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private bool IsPost => HttpMethods.IsPost(Http.Request.Method);

    private IReadOnlyDictionary<string, StringValues>? Posted =>
        _both?.Posted ?? (IsPost ? Http.Request.Form.ToDictionary(StringComparer.Ordinal) : _typical);

    protected override async Task OnInitializedAsync()
    {
        if (await reader.TankAsync(Code, Http.RequestAborted) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _tank = view.Floor.Tanks[0].Thing;
        _typical = IsTypical && _tank.Ports is [] ? Offered(_tank) : null;
        _version =
            (IsPost ? Posted : null)?.GetValueOrDefault("version").ToString()
            ?? _tank.Version.ToString(CultureInfo.InvariantCulture);
        _rows = [.. Numbers().Select(number => new Row(number, PortFields.Of(number, _tank.Port(number), wording)))];
    }

    private async Task SaveAsync()
    {
        var times = new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture);
        var said = new FormReader(Posted!, times);
        var ports = PortFields.Read(said);
        if (!said.IsFine)
        {
            _problems = said.Problems;
            return;
        }

        var readAt = int.TryParse(_version, NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : 0;
        var tank = _tank! with { Ports = ports, Version = readAt };
        switch (await inventory.EditAsync(tank, Policies.AuthorOf(Http.User), Http.RequestAborted))
        {
            case Edited.Done:
                navigation.NavigateTo($"tanks/{_tank.Code}#ports");
                break;
            case Edited.Refused(var objections):
                Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
                _objections = objections;
                break;
            default:
                Http.Response.StatusCode = StatusCodes.Status409Conflict;
                _both = BothValues.Of(Posted!, _rows.SelectMany(row => row.Fields), wording);
                _version = _tank.Version.ToString(CultureInfo.InvariantCulture); // kept again, theirs was seen
                break;
        }
    }

    // Those there are, those that were typed, and a few free ones.
    private int[] Numbers()
    {
        int[] used =
        [
            .. Enumerable
                .Range(1, Port.Most)
                .Where(number =>
                    _tank!.Port(number) is not null || Posted?.ContainsKey(PortFields.Name(number, "name")) is true
                ),
        ];
        return [.. used.Concat(Enumerable.Range(1, Port.Most).Except(used).Take(IsPost ? 0 : FreeRows)).Order()];
    }

    // As if somebody had typed them into empty fields.
    private Dictionary<string, StringValues> Offered(Tank tank)
    {
        var typed = new Dictionary<string, StringValues>(StringComparer.Ordinal);
        foreach (var field in TypicalPorts.Of(tank).SelectMany(port => PortFields.Of(port.Number, port, wording)))
        {
            typed[field.Name] = field.Start;
            typed[BothValues.WasOf(field)] = "";
        }

        return typed;
    }

    private string HeadOf(Row row) =>
        Typed(row, "name") is { Length: > 0 } name
            ? $"{row.Number} · {name}"
            : wording["ports-free", new Number("port", row.Number)];

    private bool IsOpen(Row row) =>
        row.Fields.Any(IsMarked)
        || (_tank!.Ports is [] && row == _rows[0] && Typed(row, "name") is not { Length: > 0 });

    private bool IsMarked(Field field) =>
        _problems.ContainsKey(field.Name) || _both?.Theirs.ContainsKey(field.Name) is true;

    private string? Typed(Row row, string field) =>
        Posted is { } posted
            ? posted.GetValueOrDefault(PortFields.Name(row.Number, field)).ToString()
            : row
                .Fields.First(f => string.Equals(f.Name, PortFields.Name(row.Number, field), StringComparison.Ordinal))
                .Start;

    private sealed record Row(int Number, IReadOnlyList<Field> Fields);
}
