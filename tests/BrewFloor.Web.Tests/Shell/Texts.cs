using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Shell;

/// <summary>The texts as they stand in the resource files.</summary>
internal static partial class Texts
{
    public static readonly IReadOnlyDictionary<string, string> Pages = Of("Pages");
    public static readonly IReadOnlyDictionary<string, string> Entries = Of("Entries");
    public static readonly IReadOnlyDictionary<string, string> Objections = Of("Objections");
    public static readonly IReadOnlyDictionary<string, string> Jobs = Of("Jobs");
    public static readonly IReadOnlyDictionary<string, string> Calculators = Of("Calculators");

    public static IEnumerable<string> PlacesIn(string text) =>
        Place().Matches(text).Select(match => match.Groups["name"].Value);

    /// <param name="subject">Of a file: "Pages", "Pages.de".</param>
    public static Dictionary<string, string> Of(string subject) =>
        XDocument
            .Parse(Tree.Read($"src/BrewFloor.Web/Wording/{subject}.resx"))
            .Descendants("data")
            .ToDictionary(
                data => data.Attribute("name")!.Value,
                data => data.Element("value")!.Value,
                StringComparer.Ordinal
            );

    [GeneratedRegex(@"\{(?<name>[a-z_]+)\}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Place();
}
