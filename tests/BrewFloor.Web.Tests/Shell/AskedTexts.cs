using System.Text.RegularExpressions;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Shell;

/// <summary>The keys of texts that sources ask for, found by reading the sources.</summary>
internal static partial class AskedTexts
{
    /// <summary>Keys of pages that stand in the source as they are: <c>wording["nav"]</c>.</summary>
    public static IEnumerable<string> OfPages(string source) =>
        PageKey().Matches(source).SelectMany(match => match.Groups["key"].Captures).Select(capture => capture.Value);

    /// <summary>Beginnings that a value is put behind: <c>wording["state-soil-" + soil]</c>.</summary>
    public static IEnumerable<string> BeginningsOfPages(string source) =>
        PageBeginning().Matches(source).Select(match => match.Groups["key"].Value);

    /// <summary>Keys of entries: <c>wording.Entry("line.change")</c>, <c>Label = "field.note"</c>.</summary>
    public static IEnumerable<string> OfEntries(string source) =>
        EntryKey().Matches(source).Select(match => match.Groups["key"].Value);

    /// <summary>Codes of objections, spelled in place or as a constant.</summary>
    public static IEnumerable<string> OfObjections(string source, IReadOnlyDictionary<string, string[]> constants)
    {
        foreach (Match match in Objection().Matches(source))
        {
            if (match.Groups["code"] is { Success: true } code)
            {
                yield return code.Value;
            }
            else if (match.Groups["name"] is { Success: true } name)
            {
                foreach (var value in constants.GetValueOrDefault(name.Value.Split('.')[^1]) ?? [$"?{name.Value}"])
                {
                    yield return value;
                }
            }
            else
            {
                var pattern = match.Groups["pattern"].Value;
                foreach (var kind in SubjectKinds)
                {
                    yield return Hole().Replace(pattern, kind);
                }
            }
        }
    }

    public static IEnumerable<string> OfRefusals(string source) =>
        Refusal().Matches(source).Select(match => match.Groups["code"].Value);

    /// <summary>Rules of jobs and the variants of their reasons.</summary>
    public static IEnumerable<string> OfJobs(string source)
    {
        if (Rule().Match(source) is not { Success: true } rule)
        {
            yield break;
        }

        yield return rule.Groups["rule"].Value;
        foreach (Match variant in Variant().Matches(source))
        {
            yield return $"{rule.Groups["rule"].Value}.because.{variant.Groups["variant"].Value}";
        }
    }

    /// <summary>Constants of texts by their name; two files may use one name.</summary>
    public static IReadOnlyDictionary<string, string[]> Constants(IEnumerable<string> sources) =>
        sources
            .SelectMany(source => Constant().Matches(source))
            .GroupBy(match => match.Groups["name"].Value, StringComparer.Ordinal)
            .ToDictionary(
                group => group.Key,
                group => group.Select(match => match.Groups["value"].Value).Distinct(StringComparer.Ordinal).ToArray(),
                StringComparer.Ordinal
            );

    public static IReadOnlyList<string> Sources(params string[] folders) =>
        [.. folders.SelectMany(folder => Tree.FilesIn(folder, ".cs", ".razor")).Select(Tree.Read)];

    private static readonly string[] SubjectKinds = ["tank", "batch", "culture", "item"];

    [GeneratedRegex(
        """(wording|words|Words|_words)\[\s*([A-Za-z_. ()]+\?\s*)?"(?<key>[a-z0-9-]+)"(\s*:\s*"(?<key>[a-z0-9-]+)")?\s*[\],]""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex PageKey();

    [GeneratedRegex(
        """(wording|words|Words|_words)\[\s*"(?<key>[a-z0-9-]+-)"\s*\+""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex PageBeginning();

    [GeneratedRegex(
        """(\.Entry\(\s*"(?<key>[A-Za-z0-9.-]+[A-Za-z0-9])"\s*[),]|"(?<key>(field|hint|caution|offer)\.[a-z0-9-]+)")""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex EntryKey();

    [GeneratedRegex(
        """Objection\s*\.\s*(Impossible|Stop|HardStop|Caution)\(\s*("(?<code>[a-z0-9-]+)"|\$"(?<pattern>[^"]+)"|(?<name>[A-Z][A-Za-z.]*))""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Objection();

    [GeneratedRegex(
        """(Refusal\(|(?<!string )Code = |\bNo\(|return )\s*"(?<code>[a-z]+(-[a-z]+)+|missing)"\s*[,;)\r\n}]""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Refusal();

    [GeneratedRegex("""const string Rule = "(?<rule>[a-z-]+)";""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Rule();

    [GeneratedRegex("""new(\sNumber)?\("variant", "(?<variant>[a-z]+)"\)""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Variant();

    [GeneratedRegex("""const string (?<name>[A-Za-z]+)\s*=\s*"(?<value>[^"]+)";""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Constant();

    [GeneratedRegex(@"\{[^}]+\}", RegexOptions.None, 1000)]
    private static partial Regex Hole();
}
