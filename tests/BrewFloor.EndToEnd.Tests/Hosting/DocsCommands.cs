using BrewFloor.Benchmarks.Drills;

namespace BrewFloor.EndToEnd.Tests.Hosting;

/// <summary>The commands that pages of the docs show to be typed, and which of them were.</summary>
internal sealed class DocsCommands
{
    private const string Fence = "```";

    private readonly List<string> _left = [];

    /// <param name="pages">Of docs/operate, without their ending.</param>
    public DocsCommands(params string[] pages)
    {
        foreach (var page in pages)
        {
            var lines = File.ReadAllLines(Path.Combine(PublishedApp.Root, "docs", "operate", page + ".md"));
            _left.AddRange(In(lines).Select(command => $"{page}: {command}"));
        }
    }

    /// <summary>On these pages, and never typed.</summary>
    public IReadOnlyList<string> NotTyped => _left;

    /// <summary>The next command of a page that has these words, to be typed now.</summary>
    public string Take(string page, string words)
    {
        var found = _left.Find(line =>
            line.StartsWith($"{page}: ", StringComparison.Ordinal) && line.Contains(words, StringComparison.Ordinal)
        );
        Assert.True(found is not null, $"{page}.md shows no command with \"{words}\" any more.");
        _left.Remove(found);
        return found[(page.Length + 2)..];
    }

    /// <summary>The script's commands between fences.</summary>
    public static IEnumerable<string> In(IEnumerable<string> lines)
    {
        var isBetween = false;
        foreach (var line in lines.Select(line => line.Trim()))
        {
            if (line.StartsWith(Fence, StringComparison.Ordinal))
            {
                isBetween = !isBetween;
            }
            else if (isBetween && line.Contains("./brewfloor ", StringComparison.Ordinal))
            {
                yield return line;
            }
        }
    }
}
