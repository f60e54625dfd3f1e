namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What was found on a walk over many pages, all of it told at once.</summary>
internal static class Findings
{
    public static void None(IReadOnlyCollection<string> found) =>
        Assert.True(found.Count == 0, string.Join('\n', found.Order(StringComparer.Ordinal)));
}
