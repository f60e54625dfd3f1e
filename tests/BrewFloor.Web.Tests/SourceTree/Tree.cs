namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>The repository as it lies on disk, without what builds leave behind.</summary>
internal static class Tree
{
    private static readonly string[] NotOurs = [".git", "artifacts", "bin", "obj", "TestResults", ".vs", ".idea"];

    /// <summary>The folder that holds the solution, found upwards from where the tests run.</summary>
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    /// <summary>All files, as paths from the root with forward slashes.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. FilesBelow(Root).Order(StringComparer.Ordinal)];

    public static IEnumerable<string> FilesIn(string folder, params string[] endings) =>
        Files.Where(file =>
            file.StartsWith(folder, StringComparison.Ordinal)
            && endings.Any(ending => file.EndsWith(ending, StringComparison.Ordinal))
        );

    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    public static bool Has(string path) => File.Exists(Path.Combine(Root, path)) || HasFolder(path);

    public static bool HasFolder(string path) => Directory.Exists(Path.Combine(Root, path));

    private static string FindRoot(string from)
    {
        var folder = new DirectoryInfo(from);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "BrewFloor.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"No BrewFloor.sln above {from}.");
    }

    private static IEnumerable<string> FilesBelow(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Where(file => !NotOurs.Contains(Path.GetFileName(file)))
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Concat(
                Directory
                    .EnumerateDirectories(folder)
                    .Where(below => !NotOurs.Contains(Path.GetFileName(below)))
                    .SelectMany(FilesBelow)
            );
}
