using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What the accessibility checker has to say of the page somebody stands on.</summary>
internal static class Violations
{
    public static async Task NoneAsync(Visit visit) => Assert.Empty(await OnAsync(visit));

    /// <summary>Rule, and where it is broken.</summary>
    public static async Task<IReadOnlyList<string>> OnAsync(Visit visit)
    {
        var found = await visit.Page.RunAxe();
        return
        [
            .. found.Violations.SelectMany(violation =>
                violation.Nodes.Select(node => $"{visit.Page.Url} {violation.Id}: {Shortened(node)}")
            ),
        ];
    }

    private static string Shortened(AxeResultNode node) => node.Html.Length <= 200 ? node.Html : node.Html[..200];
}
