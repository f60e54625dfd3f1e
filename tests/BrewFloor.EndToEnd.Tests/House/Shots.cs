namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>Where screenshots go: a folder of this run's own, or the one that is named (<c>BREWFLOOR_TEST_SHOTS</c>).</summary>
internal static class Shots
{
    private static readonly string? Named = Environment.GetEnvironmentVariable("BREWFLOOR_TEST_SHOTS");

    public static bool AreWanted => Named is { Length: > 0 };

    public static string Folder =>
        field ??= AreWanted
            ? Directory.CreateDirectory(Named!).FullName
            : Directory.CreateTempSubdirectory("brewfloor-shots-").FullName;
}
