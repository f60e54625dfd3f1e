using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Labels;

/// <summary>Which tanks get a label, and on what it is printed.</summary>
public sealed partial class LabelsPage(Wording wording, HouseKeeping house, FloorReader reader)
{
    private string? _address;
    private IReadOnlyList<Tank> _tanks = [];

    /// <summary>Come from a tank: only this one is ticked.</summary>
    [SupplyParameterFromQuery(Name = "tank")]
    private string? Only { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _address = (await house.SiteAsync(Http.RequestAborted)).Address;
        if (_address is not null)
        {
            var all = await reader.InventoryAsync(Http.RequestAborted);
            _tanks = [.. all.Floor.Tanks.Select(tank => tank.Thing).OrderBy(tank => tank.IsRetired)];
        }
    }

    private bool IsChosen(Tank tank) =>
        string.IsNullOrEmpty(Only)
            ? !tank.IsRetired
            : string.Equals(tank.Code, Only, StringComparison.OrdinalIgnoreCase);
}
