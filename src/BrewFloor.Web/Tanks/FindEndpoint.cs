using System.Globalization;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Tanks;

/// <summary>From what somebody typed to the page of it: a tank's code, a batch's number or part of its name, a culture, an item.</summary>
internal static class FindEndpoint
{
    public static void MapFind(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/find",
                async (string? q, FloorReader reader, CancellationToken stop) =>
                    Results.LocalRedirect(await FindAsync((q ?? "").Trim(), reader, stop))
            )
            .RequireAuthorization(Policies.Viewer);

    private static async Task<string> FindAsync(string typed, FloorReader reader, CancellationToken stop)
    {
        if (typed.Length == 0)
        {
            return "~/";
        }

        if (await reader.TankAsync(typed, stop) is { } tank)
        {
            return $"~/tanks/{tank.Floor.Tanks[0].Thing.Code}";
        }

        if (
            int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && await reader.BatchAsync(number, stop) is not null
        )
        {
            return $"~/batches/{number}";
        }

        var batches = (await reader.BatchesAsync(before: null, 200, stop)).Floor.Batches;
        if (batches.FirstOrDefault(batch => Has(batch.Thing.Name, typed)).Thing is { } named)
        {
            return $"~/batches/{named.Number}";
        }

        var cultures = (await reader.CulturesAsync(stop)).Floor.Cultures;
        if (cultures.FirstOrDefault(culture => Has(culture.Thing.Strain, typed)).Thing is { } yeast)
        {
            return $"~/yeast/{yeast.Number}";
        }

        var items = (await reader.ItemsAsync(stop)).Floor.Items;
        return items.FirstOrDefault(item => Has(item.Thing.Name, typed)).Thing is { } kept
            ? $"~/items/{kept.Number}"
            : $"~/not-found?what={Uri.EscapeDataString(typed)}";
    }

    private static bool Has(string name, string typed) =>
        name.Contains(typed, StringComparison.InvariantCultureIgnoreCase);
}
