using System.IO.Compression;
using System.Text.RegularExpressions;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Drawing;

public sealed partial class StylesheetTests
{
    [Fact]
    public void Stylesheets_and_face_leave_half_of_the_sixty_kilobytes_of_a_cold_page_to_the_page()
    {
        var css = Compressed("tokens.css") + Compressed("floor.css");
        var face = new FileInfo(Wwwroot.File("fonts/figures-600.woff2")).Length;

        Assert.InRange(css, 1, 10_240);
        Assert.InRange(css + face, 1, 31_000);
    }

    [Fact]
    public void Every_value_asked_for_is_a_token_or_comes_with_the_data()
    {
        string[] withTheData = ["x", "w", "y", "at", "step", "pw", "dw", "limit", "limit-text"];
        var tokens = Declared().Matches(File.ReadAllText(Wwwroot.File("tokens.css"))).Select(m => m.Groups["it"].Value);
        var asked = Asked().Matches(File.ReadAllText(Wwwroot.File("floor.css"))).Select(m => m.Groups["it"].Value);

        Assert.Empty(asked.Except(tokens.Concat(withTheData)));
    }

    [Fact]
    public void Colours_are_written_in_the_tokens_alone()
    {
        // Black and white of the print, where no theme counts.
        var colours = Colour().Matches(File.ReadAllText(Wwwroot.File("floor.css"))).Select(m => m.Value).Distinct();

        Assert.Empty(colours.Except(["#000", "#fff"]));
    }

    [Fact]
    public void Words_left_and_right_are_not_used_so_that_every_script_is_served() =>
        Assert.DoesNotMatch(
            "(margin|padding|border|inset)-(left|right)|text-align: (left|right)",
            File.ReadAllText(Wwwroot.File("floor.css"))
        );

    [Fact]
    public void The_face_comes_with_its_licence() =>
        Assert.Contains(
            "SIL OPEN FONT LICENSE",
            File.ReadAllText(Wwwroot.File("fonts/OFL.txt")),
            StringComparison.Ordinal
        );

    private static long Compressed(string name)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            brotli.Write(File.ReadAllBytes(Wwwroot.File(name)));
        }

        return packed.Length;
    }

    [GeneratedRegex("--(?<it>[a-z0-9-]+):", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Declared();

    [GeneratedRegex("var\\(--(?<it>[a-z0-9-]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Asked();

    [GeneratedRegex("#[0-9a-f]{3,8}\\b(?=[; ,)])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Colour();
}

/// <summary>The served files, as they lie in the source.</summary>
internal static class Wwwroot
{
    public static string File(string name) => Path.Combine(Tree.Root, "src/BrewFloor.Web/wwwroot", name);
}
