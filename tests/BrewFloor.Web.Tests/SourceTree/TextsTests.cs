namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>The tree says nothing of the machine it was written on, nor where packages and images come from.</summary>
public class TextsTests
{
    // In two halves, so that this file doesn't hold what it looks for.
    private static readonly string[] Foreign =
    [
        "/" + "work/",
        "/" + "root/",
        "/" + "home/",
        "mcr." + "microsoft.com",
        "docker" + ".io",
        "ghcr" + ".io",
        "quay" + ".io",
        "api.nuget" + ".org",
        "registry." + "npmjs",
        "deb." + "debian.org",
    ];

    private static readonly string[] NotText = [".png", ".woff2", ".ico", ".dump", ".gz"];

    [Fact]
    public void No_file_names_a_folder_of_one_machine_or_the_host_of_a_registry() =>
        Assert.Empty(
            Tree.Files.Where(file => !NotText.Contains(Path.GetExtension(file)))
                .SelectMany(file => ForeignIn(Tree.Read(file)).Select(found => $"{file}: {found}"))
        );

    [Fact]
    public void The_check_can_fail() =>
        Assert.Equal(["/" + "work/", "ghcr" + ".io"], ForeignIn("FROM ghcr" + ".io/x built in /" + "work/here"));

    private static IEnumerable<string> ForeignIn(string text) =>
        Foreign.Where(foreign => text.Contains(foreign, StringComparison.Ordinal));
}
