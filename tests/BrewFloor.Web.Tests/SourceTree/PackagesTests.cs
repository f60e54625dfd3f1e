using System.Text.Json;
using System.Xml.Linq;

namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>Each package has a line that says what for, under which licence, and what without it.</summary>
public class PackagesTests
{
    private const string Decision = "docs/decisions/0004-packages.md";

    [Fact]
    public void Every_package_has_its_reason_and_no_reason_is_left_over() =>
        Assert.Equal(
            Used().Order(StringComparer.OrdinalIgnoreCase),
            Explained(Tree.Read(Decision)).Order(StringComparer.OrdinalIgnoreCase)
        );

    [Fact]
    public void A_line_without_a_licence_or_an_alternative_explains_nothing() =>
        Assert.Equal(
            ["A"],
            Explained("| A | tests | MIT | by hand |\n| B | tests | | by hand |\n| C | tests | MIT | |")
        );

    private static IEnumerable<string> Used() =>
        XDocument
            .Parse(Tree.Read("Directory.Packages.props"))
            .Descendants("PackageVersion")
            .Select(package => package.Attribute("Include")!.Value)
            .Concat(
                JsonDocument
                    .Parse(Tree.Read("dotnet-tools.json"))
                    .RootElement.GetProperty("tools")
                    .EnumerateObject()
                    .Select(tool => tool.Name)
            );

    private static IEnumerable<string> Explained(string text) =>
        text.Split('\n')
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Where(cells => cells is ["", _, not "", not "", not "", ""])
            .Select(cells => cells[1])
            .Where(name => name is not ("package" or "---"));
}
