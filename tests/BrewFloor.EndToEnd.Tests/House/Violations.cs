using Deque.AxeCore.Commons;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What the accessibility checker has to say of the page somebody stands on.</summary>
internal static class Violations
{
    // Run in the page itself: the packaged way opens a second page for each report and takes four times as long.
    private static readonly string Checker = new BundledAxeScriptProvider().GetScript() + "; true";

    public static async Task NoneAsync(Visit visit) => Assert.Empty(await OnAsync(visit));

    /// <summary>Rule, and where it is broken.</summary>
    public static async Task<IReadOnlyList<string>> OnAsync(Visit visit)
    {
        await visit.Page.EvaluateAsync(Checker);
        return await visit.Page.EvaluateAsync<string[]>(
            """
            async () => {
              const found = await axe.run(document, { resultTypes: ['violations'] });
              return found.violations.flatMap(rule => rule.nodes.map(
                node => `${location.pathname} ${rule.id}: ${node.html.slice(0, 200)}`));
            }
            """
        );
    }

    /// <summary>What is hard to read once the page changes its colours; it has to have been looked at before.</summary>
    /// <remarks>The server writes a theme's name on the page and nothing else, so the page needn't be loaded again.</remarks>
    public static Task<string[]> OfContrastAsync(Visit visit, string theme) =>
        visit.Page.EvaluateAsync<string[]>(
            """
            async theme => {
              document.documentElement.dataset.theme = theme;
              const found = await axe.run(document, { runOnly: ['color-contrast'], resultTypes: ['violations'] });
              return found.violations.flatMap(rule => rule.nodes.map(
                node => `${location.pathname} ${rule.id} in ${theme}: ${node.html.slice(0, 200)}`));
            }
            """,
            theme
        );
}
