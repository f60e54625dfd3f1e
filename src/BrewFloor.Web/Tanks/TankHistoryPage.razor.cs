using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>How a tank was described, change by change: who, when, and what was another before.</summary>
public sealed partial class TankHistoryPage(
    Wording wording,
    FloorReader reader,
    LogReader log,
    Inventory inventory,
    NavigationManager navigation
)
{
    private IReadOnlyList<(Change<Tank> Change, IReadOnlyList<string> What)> _changes = [];
    private IReadOnlyDictionary<Guid, string> _names = new Dictionary<Guid, string>();

    [Parameter, EditorRequired]
    public required string Code { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (await reader.TankAsync(Code, Http.RequestAborted) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _names = await log.NamesAsync(Http.RequestAborted);
        var changes = await inventory.HistoryAsync(view.Floor.Tanks[0].Thing.Id, Http.RequestAborted);
        _changes =
        [
            .. changes.Select(
                (change, i) =>
                    (
                        change,
                        (IReadOnlyList<string>)
                            [
                                .. TankChanges.Between(
                                    i + 1 < changes.Count ? changes[i + 1].Thing : null,
                                    change.Thing,
                                    wording
                                ),
                            ]
                    )
            ),
        ];
    }

    private string Who(Guid id) => _names.GetValueOrDefault(id) ?? "?";
}
