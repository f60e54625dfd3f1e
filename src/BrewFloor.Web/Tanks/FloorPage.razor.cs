using BrewFloor.Domain.Cleaning;
using BrewFloor.Store.Log;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>Every tank, drawn, what needs somebody first on top.</summary>
public sealed partial class FloorPage(Wording wording, FloorReader reader, LogReader log)
{
    private static readonly string[] Order = ["overdue", "due", "soon", "none", "off"];

    private static readonly string[] FilterKeys = ["all", "beer", "ready", "clean", "off"];

    private IReadOnlyList<Bay> _bays = [];
    private FloorScale _scale;

    [SupplyParameterFromQuery]
    private string? Show { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Showing =>
        Filters.Any(filter => string.Equals(filter.Key, Show, StringComparison.Ordinal)) ? Show! : "all";

    private IEnumerable<(string Key, int Count)> Filters =>
        FilterKeys
            .Select(key => (key, _bays.Count(bay => Shows(bay, key))))
            .Where(filter => filter.key is "all" || filter.Item2 > 0);

    private IEnumerable<IGrouping<string, Bay>> Groups =>
        _bays
            .Where(bay => Shows(bay, Showing))
            .GroupBy(bay => bay.Group, StringComparer.Ordinal)
            .OrderBy(group => Array.IndexOf(Order, group.Key));

    protected override async Task OnInitializedAsync()
    {
        var floor = await reader.FloorAsync(Http.RequestAborted);
        var names = await log.NamesAsync(Http.RequestAborted);
        _bays =
        [
            .. Bays.Of(floor, names)
                .OrderBy(bay => bay.MostPressing?.Job.DueAt ?? DateTimeOffset.MaxValue)
                .ThenBy(bay => bay.Tank.Code, StringComparer.Ordinal),
        ];
        _scale = FloorScale.Of([.. _bays.Select(bay => bay.Figure)]);
    }

    private static bool Shows(Bay bay, string filter) =>
        filter switch
        {
            "beer" => bay.State.HoldsBeer,
            "ready" => bay.IsReady,
            "clean" => bay is { IsEmpty: true, Soil: not Soil.Sanitized and not Soil.Clean },
            "off" => bay.State.OutOfService is not null,
            _ => true,
        };

    private static MarkKind MarkOf(string group) =>
        group switch
        {
            "overdue" => MarkKind.Overdue,
            "due" => MarkKind.Due,
            "soon" => MarkKind.Soon,
            "off" => MarkKind.OutOfService,
            _ => MarkKind.NothingDue,
        };
}
