using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>Every batch, the newest first.</summary>
public sealed partial class BatchesPage(Wording wording, FloorReader reader)
{
    private const int PageLength = 50;

    private IReadOnlyList<ShownBatch> _batches = [];

    [SupplyParameterFromQuery]
    private int? Before { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private bool HasMore => _batches.Count == PageLength;

    protected override async Task OnInitializedAsync()
    {
        var view = await reader.BatchesAsync(Before, PageLength, Http.RequestAborted);
        _batches =
        [
            .. view.Floor.Batches.Select(batch => new ShownBatch(batch.Thing, batch.State, view.Floor.Rules, view.Now)),
        ];
    }
}
