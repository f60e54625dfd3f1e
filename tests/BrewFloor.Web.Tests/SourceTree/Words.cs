using System.Text.RegularExpressions;

namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>What a text names: paths and commands in backticks, links, headings, variables.</summary>
internal static partial class Words
{
    private static readonly string[] Endings =
    [
        ".md",
        ".cs",
        ".razor",
        ".resx",
        ".css",
        ".js",
        ".json",
        ".csv",
        ".txt",
        ".csproj",
        ".props",
        ".sln",
        ".sh",
        ".yml",
        ".service",
        ".png",
    ];

    private static readonly string[] TopFolders = ["src/", "tests/", "docs/", "deploy/", "build/", ".ci/"];

    public static IEnumerable<string> PathsIn(string text) =>
        Backticked().Matches(text).Select(match => match.Groups["word"].Value).Where(IsPath);

    public static IEnumerable<string> LinksIn(string text) =>
        Link()
            .Matches(text)
            .Select(match => match.Groups["word"].Value)
            .Where(link => !link.Contains(':', StringComparison.Ordinal));

    /// <summary>What headings are linked by: lower case, hyphens for spaces, punctuation gone.</summary>
    public static IEnumerable<string> AnchorsIn(string text) =>
        Heading()
            .Matches(text)
            .Select(match => NotInAnchors().Replace(match.Groups["word"].Value.Trim(), ""))
            .Select(words => string.Concat(words.Select(c => c == ' ' ? '-' : char.ToLowerInvariant(c))));

    /// <summary>The commands a text calls the script with.</summary>
    public static IEnumerable<string> CommandsIn(string text) =>
        Call().Matches(text).Select(match => match.Groups["word"].Value);

    /// <summary>The commands a script has, each a function of its name.</summary>
    public static IEnumerable<string> CommandsOf(string script) =>
        CommandFunction().Matches(script).Select(match => match.Groups["word"].Value);

    public static IEnumerable<string> VariablesIn(string text) =>
        Variable().Matches(text).Select(match => match.Value).Distinct(StringComparer.Ordinal);

    public static bool Matches(string pattern, IEnumerable<string> files)
    {
        var whole = $"^{Regex.Escape(pattern).Replace(@"\*", "[^/]*", StringComparison.Ordinal)}$";
        return files.Any(file => Regex.IsMatch(file, whole, RegexOptions.None, TimeSpan.FromSeconds(1)));
    }

    private static bool IsPath(string word) =>
        PathLike().IsMatch(word)
        && (
            TopFolders.Any(top => word.StartsWith(top, StringComparison.Ordinal))
            || (
                word[0] is not ('/' or '.')
                && Endings.Any(ending => word.Length > ending.Length && word.EndsWith(ending, StringComparison.Ordinal))
            )
        );

    [GeneratedRegex("`(?<word>[^`\n]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Backticked();

    [GeneratedRegex(@"^[A-Za-z0-9_.*/-]+$", RegexOptions.None, 1000)]
    private static partial Regex PathLike();

    [GeneratedRegex(@"\]\((?<word>[^)\s]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();

    [GeneratedRegex("^#+ (?<word>.+)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\p{L}\p{N} _-]", RegexOptions.None, 1000)]
    private static partial Regex NotInAnchors();

    [GeneratedRegex(@"\./brewfloor (?<word>[a-z][a-z-]*)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Call();

    [GeneratedRegex(@"^do_(?<word>[a-z]+)\(\)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CommandFunction();

    [GeneratedRegex(@"\bBREWFLOOR_[A-Z_]*[A-Z]\b|\bConnectionStrings__[A-Za-z]+\b", RegexOptions.None, 1000)]
    private static partial Regex Variable();
}
