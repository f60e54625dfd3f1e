using BrewFloor.Domain.Tanks;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Labels;

/// <summary>Labels as they are printed: code, silhouette, and the address of the tank's page to be read by a phone.</summary>
public sealed partial class LabelSheetPage(Wording wording, HouseKeeping house, FloorReader reader)
{
    private string? _address;
    private IReadOnlyList<Tank> _tanks = [];

    [SupplyParameterFromQuery(Name = "tank")]
    private string[]? Codes { get; set; }

    [SupplyParameterFromQuery(Name = "paper")]
    private string? Typed { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Paper =>
        Enum.TryParse<LabelPaper>(Typed, ignoreCase: true, out var paper) && Enum.IsDefined(paper)
            ? paper.ToString()
            : nameof(LabelPaper.A4);

    protected override async Task OnInitializedAsync()
    {
        _address = (await house.SiteAsync(Http.RequestAborted)).Address;
        var wanted = (Codes ?? []).Select(Inventory.Code).ToHashSet(StringComparer.Ordinal);
        var all = await reader.InventoryAsync(Http.RequestAborted);
        _tanks = [.. all.Floor.Tanks.Select(tank => tank.Thing).Where(tank => wanted.Contains(tank.Code))];
    }

    private string AddressOf(Tank tank) => $"{_address}/tanks/{tank.Code}";
}
