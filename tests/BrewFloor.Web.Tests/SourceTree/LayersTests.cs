using System.Reflection;
using System.Xml.Linq;
using BrewFloor.Brewing.Extract;

namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>Web -> Store -> Domain -> Brewing, and nothing but units and the framework in the two pure ones.</summary>
public class LayersTests
{
    private static readonly string[] InOrder = ["Brewing", "Domain", "Store", "Web"];

    [Fact]
    public void Each_project_knows_only_those_below_it() =>
        Assert.Empty(InOrder.SelectMany(project => Upward(project, References(project))));

    [Fact]
    public void Each_project_says_what_it_stands_on() =>
        Assert.Equal(["Brewing", "DemoSeed", "Domain", "Store"], InOrder.SelectMany(References).Distinct().Order());

    [Theory]
    [InlineData("Store", "Domain", 0)]
    [InlineData("Domain", "Store", 1)]
    [InlineData("Brewing", "Web", 1)]
    [InlineData("Store", "Store", 1)]
    [InlineData("Web", "Stranger", 1)]
    public void The_order_check_can_fail(string project, string reference, int expected) =>
        Assert.Equal(expected, Upward(project, [reference]).Count());

    [Fact]
    public void The_science_stands_on_units_alone() =>
        Assert.Empty(Strangers(typeof(DegreesPlato).Assembly, "UnitsNet"));

    [Fact]
    public void The_floor_stands_on_units_and_the_science_alone() =>
        Assert.Empty(Strangers(typeof(Domain.Listed<>).Assembly, "UnitsNet", "BrewFloor.Brewing"));

    [Fact]
    public void The_stranger_check_can_fail() =>
        Assert.Contains("Microsoft.AspNetCore.Mvc.Testing", Strangers(AssemblyWithAStranger(), "UnitsNet"));

    // These tests themselves, which use the test host.
    private static Assembly AssemblyWithAStranger()
    {
        GC.KeepAlive(typeof(Microsoft.AspNetCore.Mvc.Testing.WebApplicationFactory<Program>));
        return typeof(LayersTests).Assembly;
    }

    private static IEnumerable<string> Upward(string project, IEnumerable<string> references) =>
        references
            .Where(reference => (project, reference) is not ("Web", "DemoSeed")) // a story for the demo; it knows the domain alone
            .Where(reference =>
                !InOrder.Contains(reference) || Array.IndexOf(InOrder, reference) >= Array.IndexOf(InOrder, project)
            )
            .Select(reference => $"{project} -> {reference}");

    private static IEnumerable<string> References(string project) =>
        XDocument
            .Parse(Tree.Read($"src/BrewFloor.{project}/BrewFloor.{project}.csproj"))
            .Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value))
            .Select(name => name.Replace("BrewFloor.", "", StringComparison.Ordinal));

    private static IEnumerable<string> Strangers(Assembly assembly, params string[] known) =>
        assembly
            .GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => name is not "System" && !name.StartsWith("System.", StringComparison.Ordinal))
            .Except(known, StringComparer.Ordinal);
}
