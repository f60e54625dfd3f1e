namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>The docs name nothing that isn't there: paths, links, commands, settings.</summary>
public class DocsTests
{
    private static readonly string[] Docs =
    [
        "README.md",
        "DEVELOPERS.md",
        "CHANGELOG.md",
        .. Tree.FilesIn("docs/", ".md"),
        .. Tree.FilesIn("deploy/", ".md"),
    ];

    private static readonly string[] Commands = [.. Words.CommandsOf(Tree.Read("brewfloor"))];

    public static TheoryData<string> EveryDoc => [.. Docs];

    [Theory]
    [MemberData(nameof(EveryDoc))]
    public void Every_path_in_a_doc_is_there(string doc) =>
        Assert.DoesNotContain(Words.PathsIn(Tree.Read(doc)), path => !IsThere(path));

    [Theory]
    [InlineData("see `src/BrewFloor.Domain/Nowhere.cs`", "src/BrewFloor.Domain/Nowhere.cs")]
    [InlineData("`docs/none/` and `DEVELOPERS.md`", "docs/none/")]
    [InlineData("`Program.cs`", "Program.cs")] // paths are whole, from the root
    [InlineData("`src/BrewFloor.Web/*.none`", "src/BrewFloor.Web/*.none")]
    public void The_path_check_can_fail(string text, string missing) =>
        Assert.Equal([missing], Words.PathsIn(text).Where(path => !IsThere(path)));

    [Theory]
    [InlineData("`/tanks/{code}` is a page, `./brewfloor test` a command, `TankState` a type")]
    [InlineData("`http://localhost:8080`, `artifacts/published`, and `tests/*/BrewFloor.Web.Tests.csproj`")]
    public void What_is_no_path_or_is_there_is_let_be(string text) =>
        Assert.DoesNotContain(Words.PathsIn(text), path => !IsThere(path));

    [Theory]
    [MemberData(nameof(EveryDoc))]
    public void Every_link_within_the_repository_leads_somewhere(string doc) =>
        Assert.DoesNotContain(Words.LinksIn(Tree.Read(doc)), link => !LeadsSomewhere(doc, link));

    [Theory]
    [InlineData("docs/glossary.md", "../README.md", true)]
    [InlineData("docs/glossary.md", "README.md", false)]
    [InlineData("README.md", "DEVELOPERS.md#where-is-", true)]
    [InlineData("README.md", "DEVELOPERS.md#nowhere", false)]
    public void The_link_check_can_fail(string doc, string link, bool leads) =>
        Assert.Equal(leads, LeadsSomewhere(doc, link));

    [Theory]
    [MemberData(nameof(EveryDoc))]
    public void Every_command_in_a_doc_is_one_of_the_script(string doc) =>
        Assert.Empty(Words.CommandsIn(Tree.Read(doc)).Except(Commands));

    [Fact]
    public void The_command_check_can_fail() =>
        Assert.Equal(["brew"], Words.CommandsIn("`./brewfloor brew` and `./brewfloor test`").Except(Commands));

    [Theory]
    [InlineData("docs/log.md")]
    [InlineData("docs/operate/security.md")]
    public void Every_test_that_a_doc_names_is_there(string doc)
    {
        Assert.NotEmpty(TestsNamedIn(Tree.Read(doc)));
        Assert.Empty(TestsNamedIn(Tree.Read(doc)).Except(Tests()));
    }

    [Fact]
    public void The_check_of_named_tests_can_fail() =>
        Assert.Equal(
            ["A_test_of_nothing"],
            TestsNamedIn("`A_test_of_nothing`, `The_check_of_named_tests_can_fail`").Except(Tests())
        );

    [Fact]
    public void Every_command_of_the_script_is_told_by_its_usage_and_in_a_doc()
    {
        Assert.Equal(
            Commands.Order(StringComparer.Ordinal),
            Words.CommandsIn(Tree.Read("brewfloor")).Distinct().Intersect(Commands).Order(StringComparer.Ordinal)
        );
        Assert.Empty(Commands.Except(Docs.SelectMany(doc => Words.CommandsIn(Tree.Read(doc)))));
    }

    [Fact]
    public void Every_variable_of_ours_is_in_the_table_of_settings() =>
        Assert.Empty(Variables().Except(Words.VariablesIn(Tree.Read("docs/operate/settings.md"))));

    [Fact]
    public void The_table_of_settings_holds_no_variable_that_nothing_reads() =>
        Assert.Empty(Words.VariablesIn(Tree.Read("docs/operate/settings.md")).Except(Variables()));

    [Fact]
    public void The_settings_check_can_fail() =>
        Assert.Equal(["BREWFLOOR_" + "NOWHERE"], Words.VariablesIn("echo $BREWFLOOR_" + "NOWHERE").Except(Variables()));

    private static IEnumerable<string> TestsNamedIn(string text) =>
        text.Split('`').Where(word => word.Count(c => c is '_') > 1 && !word.Any(char.IsWhiteSpace));

    private static IEnumerable<string> Tests() =>
        Tree.FilesIn("tests/", "Tests.cs")
            .SelectMany(file => Tree.Read(file).Split('\n'))
            .Where(line => line.TrimStart().StartsWith("public ", StringComparison.Ordinal))
            .SelectMany(line => line.Split(' ', '('));

    private static IEnumerable<string> Variables() =>
        Tree.FilesIn("src/", ".cs", ".json")
            .Concat(["brewfloor", "build/test.sh", "docker-compose.yml", "deploy/Dockerfile"])
            .SelectMany(file => Words.VariablesIn(Tree.Read(file)))
            .Distinct(StringComparer.Ordinal);

    // Made by building, or by whoever runs it: right to name, not there to find.
    private static bool IsThere(string path) =>
        path.StartsWith("artifacts/", StringComparison.Ordinal)
        || (path.Contains('*', StringComparison.Ordinal) ? Words.Matches(path, Tree.Files) : Tree.Has(path));

    private static bool LeadsSomewhere(string doc, string link)
    {
        var parts = link.Split('#');
        var target =
            parts[0].Length == 0
                ? doc
                : Path.GetRelativePath(
                    Tree.Root,
                    Path.GetFullPath(Path.Combine(Tree.Root, Path.GetDirectoryName(doc)!, parts[0]))
                );
        return Tree.Has(target)
            && (parts.Length == 1 || Words.AnchorsIn(Tree.Read(target)).Contains(parts[1], StringComparer.Ordinal));
    }
}
