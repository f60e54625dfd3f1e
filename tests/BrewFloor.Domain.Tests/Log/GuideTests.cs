using BrewFloor.Domain.Log;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>The guide says what the matrix says. To make it anew: run this test and copy the file that it names.</summary>
public class GuideTests
{
    [Fact]
    public void The_page_of_rules_is_the_one_made_from_the_matrix()
    {
        var made = Guide.Made();
        var isSame = Tree.Has(Guide.Page) && string.Equals(Tree.Read(Guide.Page), made, StringComparison.Ordinal);
        var fresh = Path.Combine(AppContext.BaseDirectory, "rules.md");
        if (!isSame)
        {
            File.WriteAllText(fresh, made);
        }

        Assert.True(isSame, $"{Guide.Page} differs: cp {Path.GetRelativePath(Tree.Root, fresh)} {Guide.Page}");
    }

    [Fact]
    public void Every_kind_has_a_line_in_the_guide() => Assert.Empty(WithoutLine(EntryKinds.ByName.Keys));

    [Fact]
    public void The_check_of_the_lines_can_fail() => Assert.Equal(["krausened"], WithoutLine(["krausened", "filled"]));

    [Fact]
    public void No_line_is_left_of_a_kind_that_is_gone() =>
        Assert.Empty(Guide.ByKind().Keys.Except(EntryKinds.ByName.Keys));

    private static IEnumerable<string> WithoutLine(IEnumerable<string> kinds) =>
        kinds.Where(kind => !Guide.ByKind().TryGetValue(kind, out var line) || string.IsNullOrWhiteSpace(line));
}
